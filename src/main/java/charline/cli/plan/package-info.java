/** Commands about planned patches. */
package charline.cli.plan;
