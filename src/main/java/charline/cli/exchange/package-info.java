/** Commands that bring trial sheets in and take them out. */
package charline.cli.exchange;
