/** Commands about patches: record, read, show, put right, take out. */
package charline.cli.patch;
