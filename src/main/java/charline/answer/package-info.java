/**
 * One question about trials in, one answer out: the same for the command line, the page, the sheet
 * and JSON.
 *
 * <p>Answers are values. Nothing here is a sentence for one face, or names an option of one.
 */
package charline.answer;
