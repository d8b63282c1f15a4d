/**
 * Questions in plain words, such as {@code clean latex over pine last month}, turned into a {@link
 * charline.log.Filter}.
 *
 * <p>This package must know nothing of how an answer is shown.
 *
 * <h2>Decisions</h2>
 *
 * <p>People's names count in a question only where a word means nothing else. Who burned and judged
 * is spread over all rows, and no index on it would pay for itself. Rejected: reading a million
 * rows to learn that "char" is a mark.
 */
package charline.log.search;
