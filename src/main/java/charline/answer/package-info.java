/**
 * One question about trials in, one answer out: the same for the command line, the page, the sheet
 * and JSON.
 *
 * <p>Answers are values. Nothing here is a sentence for one face, or names an option of one.
 *
 * <h2>Decisions</h2>
 *
 * <p>One finish that the beam must stay off keeps the list, window, quote and sheet of all its
 * trials back, since they are pooled and whoever holds the paper cannot tell the finishes apart.
 * The answer names the finish and what to do. Rejected: answering for the others with a note that
 * it is not for this one. Only the first list of a family, which rests on no patch yet, is given
 * for the finishes that may be lasered, and names the others.
 *
 * <p>A result of a sample for a whole job counts for a finish that was burned on boards of that job
 * alone. One sample that found something outweighs later ones that did not, until it is void,
 * because coats differ from place to place. Rejected: the latest result counts.
 */
package charline.answer;
