/** The command that serves the bench page. */
package charline.cli.bench;
