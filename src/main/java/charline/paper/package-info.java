/**
 * The printed page: values in, HTML out.
 *
 * <p>This package must not know of the log or of commands.
 */
package charline.paper;
