/** Commands that look things up in the log. */
package charline.cli.ask;
