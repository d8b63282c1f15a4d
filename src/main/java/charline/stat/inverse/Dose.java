package charline.stat.inverse;

import charline.stat.interval.Bound;
import charline.stat.interval.FiellerSet;
import charline.stat.interval.Interval;

/**
 * The value of one covariate at which the fitted risk has a given size.
 *
 * @param column the covariate
 * @param risk between 0 and 1
 * @param estimate in units of the covariate
 * @param slope of the linear predictor along the covariate, not 0
 * @param deltaStandardError by the delta method; too small where the slope is poorly known
 * @param profile limits from the profile likelihood; the ones to trust for few rows
 * @param delta estimate and normal quantile times the standard error
 * @param fieller Fieller's set, with the normal quantile
 * @param dropWithoutSlope drop of twice the objective when the slope is 0; where it is within the
 *     chi-square quantile, at least one profile limit is unbounded
 */
public record Dose(
    String column,
    double risk,
    double estimate,
    double slope,
    double deltaStandardError,
    Interval profile,
    Interval delta,
    FiellerSet fieller,
    double dropWithoutSlope)
    implements DoseOutcome {

  /** The profile limit on the side of less risk: the lower one where risk rises. */
  public Bound cautious() {
    return slope > 0 ? profile.lower() : profile.upper();
  }
}
