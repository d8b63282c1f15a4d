/**
 * Ways of working: coat, rig, figure, place, pulse duration, rest, wetting and moisture, and how
 * each enters a model as a shift of its even-chance dose.
 *
 * <p>This package must not know of posteriors.
 *
 * <h2>Decisions</h2>
 *
 * <p>Each thing in which the trials of a stratum differ shifts the dose that chars and the dose
 * that clears, by a factor of its own each, with a prior about 1 that shrinks it. Pooled as one
 * way, two figures whose doses differed by 1.8 gave one window and no sign; kept in strata of their
 * own, each would have to be tried from the beginning.
 *
 * <p>The levels of a name are coded by orthonormal contrasts, so that the prior of the difference
 * of any two is the same and none of them is the reference: the fit is the same whichever way is
 * asked about.
 *
 * <p>Rig, figure and place go by name, pulse duration by its logarithm, moisture by percent. A rest
 * of less than ten seconds leaves the wood hot: heat left near the surface falls with the square
 * root of time (Carslaw and Jaeger 1959, Conduction of Heat in Solids, section 2.4), so that after
 * ten seconds a third of what was there after one is left.
 *
 * <p>What always goes together cannot be told apart: where each rig was used with one figure, the
 * rig has the shift of both. A model has at most six such columns; what did not fit is named.
 */
package charline.model.way;
