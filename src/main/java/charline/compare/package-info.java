/**
 * Two ways of working on the same stock, held against each other: how much room each has between
 * clearing and charring, and which is likely to be better.
 *
 * <p>This package must not know of the log, of files or of screens.
 *
 * <h2>Decisions</h2>
 *
 * <p>Better means more room: the ratio of the dose that chars a twentieth of patches to the dose
 * that clears nine in ten. Speed does not count, as a way with no room cannot be used at any speed.
 *
 * <p>Ways of one stratum are compared within one fit, draw by draw, at one intensity. What boards
 * and patches scatter then counts for both alike and drops out; two fits would have to tell a
 * difference of ways from a difference of boards. Ways under different light have fits of their
 * own, whose draws are independent.
 *
 * <p>Where no board carries patches of both ways, a difference of boards looks like one of ways.
 * The prior of the boards' spread allows for that, and the answer says so.
 *
 * <p>How many more pairs would settle it follows from what the trials so far have told for each
 * patch of the rarer way. It is an estimate: later pairs may say another thing.
 */
package charline.compare;
