/**
 * The log: every patch kept, nothing ever deleted. The only package that imports {@code java.sql}.
 *
 * <p>This package must not know of statistics, models, windows or screens.
 */
package charline.log;
