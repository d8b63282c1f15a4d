/**
 * The passes-to-event model: patches in, posteriors out. The only translator between trade words
 * and arrays.
 *
 * <p>This package must not know of the log, of files or of screens.
 */
package charline.model;
