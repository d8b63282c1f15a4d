/**
 * How far long work is, for whoever waits. The work says it; a face shows it.
 *
 * <p>This package must know nothing but numbers and words.
 */
package charline.progress;
