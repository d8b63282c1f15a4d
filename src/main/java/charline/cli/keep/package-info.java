/** Commands that keep the log safe: copy it, join another, look whether it is sound. */
package charline.cli.keep;
