/**
 * The names in a log, for a shell that completes what a person types: one read and nothing else, as
 * it happens at every press of a key. This package must not know of anything but the file.
 */
package charline.log.names;
