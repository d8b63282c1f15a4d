/**
 * The things a person has and does at the bench: rigs, boards, finishes, patches and what was seen
 * on them. Trade words with their rules, as plain values.
 *
 * <p>This package must not know of statistics, databases, files or screens.
 */
package charline.trial;
