/**
 * Questions in plain words, such as {@code clean latex over pine last month}, turned into a {@link
 * charline.log.Filter}.
 *
 * <p>This package must know nothing of how an answer is shown.
 */
package charline.log.search;
