/** Commands about the log as a file: trial sheets in and out, backup, merge, check. */
package charline.cli.log;
