package charline.model.classical;

/**
 * The passes by which a share of patches has had the event.
 *
 * @param share between 0 and 1
 * @param doseJoulesPerCm2 per pass; the intensity is F0
 * @param passes estimate, as a real number
 * @param limits two-sided at {@link ClassicalRegression#LIMITS}, by the delta method on ln passes
 */
public record PassesByShare(double share, double doseJoulesPerCm2, double passes, Limits limits) {}
