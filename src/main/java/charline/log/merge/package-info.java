/**
 * Joining another log into this one: what is new comes in, what both amended is a conflict until a
 * person decides it.
 *
 * <p>This package must know no command and no screen.
 *
 * <h2>Decisions</h2>
 *
 * <p>A merge compares histories, not clocks. Where one log knows all changes that the other made to
 * a row, the later state is taken; where each has changes that the other lacks, a person decides.
 * The decision is a change too, so it is asked once and travels back. Rejected: last clock wins,
 * which decides silently and by the worse clock.
 *
 * <p>A merge refuses patches that both logs contain under identities of their own: a trial sheet
 * imported on both benches doubled every patch, and the window came out too sure. Rejected: taking
 * them for one, which would join what two people went on to amend apart; voiding one of them
 * unasked.
 *
 * <p>A patch or plan that got a new code in a merge gets that code in the log it came from too, at
 * the next merge back, because a code on the tape must mean one patch. Where both benches merged a
 * copy of the other at once, the first to merge again gives a third code. Rejected: codes by log,
 * where P-0003 is one patch here and another there.
 *
 * <p>Rigs, boards and finishes that both benches set up under one name and that agree are offered
 * to be joined, never joined unasked: two shops may each own such a laser, and a board of the same
 * wood. Rejected: joining what agrees, which would make one board of two.
 *
 * <p>A board's new name travels in a merge as long as only one bench renamed it. Names that gave
 * way in a merge do not count as renamed.
 */
package charline.log.merge;
