/**
 * Which patches are wanted, as a tree of conditions, and the patches that meet it; and the words of
 * a log, by which people name them.
 *
 * <p>This package must know nothing of how a question is worded, nor of how an answer is shown.
 *
 * <h2>Decisions</h2>
 *
 * <p>People's names count in a question only where a word means nothing else. Who burned and judged
 * is spread over all rows, and no index on it would pay for itself. Rejected: reading a million
 * rows to learn that "char" is a mark.
 *
 * <p>SQL lets through what may meet a condition, and every patch that came through is looked at
 * once more. Rejected: a condition all in SQL, where doses hang on curves of power checks; and two
 * exact tests side by side, which would come to differ.
 */
package charline.log.search;
