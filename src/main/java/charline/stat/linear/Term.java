package charline.stat.linear;

import charline.stat.distribution.StandardNormal;

/**
 * One coefficient of a fit.
 *
 * @param name its column
 * @param estimate on the scale of the linear predictor
 * @param standardError from the information at the estimate, above 0
 */
public record Term(String name, double estimate, double standardError) {

  /** Estimate over standard error. */
  public double z() {
    return estimate / standardError;
  }

  /** Two-sided normal probability of a larger {@link #z}; poor for few rows, prefer profiles. */
  public double waldProbability() {
    return StandardNormal.beyond(z());
  }
}
