/** Commands that record patches and put records right. */
package charline.cli.record;
