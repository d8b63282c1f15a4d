package charline.model;

import charline.stat.sampling.DriftingQuantile;

/**
 * For each posterior draw, the dose per pass at which an event's chance on a new board reaches a
 * given number. It falls with passes, and as power rises at one speed: intensity by itself may move
 * it either way.
 */
public final class DoseLimit {
  private final Posterior posterior;
  private final double[] offset;

  DoseLimit(Posterior posterior, double[] offset) {
    this.posterior = posterior;
    this.offset = offset;
  }

  /**
   * Natural logarithm of the dose per pass (J/cm²) below which a share {@code probability} of the
   * posterior has its limit.
   *
   * <p>For char at confidence c take 1 - c: with that dose the risk keeps its limit with
   * probability c. For clearing take c: with that dose the chance reaches its target with
   * probability c.
   *
   * @param lnIntensity natural logarithm of fluence or irradiance
   */
  public double lnDose(double probability, double lnIntensity, int passes) {
    double lnPasses = Math.log(passes);
    return posterior.quantile(
        posterior.perDraw(i -> posterior.lnDose(i, offset[i], lnIntensity, lnPasses)), probability);
  }

  /**
   * The same at several intensities, quickest where their logarithms go up in even steps.
   *
   * @return one natural logarithm of a dose for each
   */
  public double[] lnDose(double probability, double[] lnIntensity, int passes) {
    double lnPasses = Math.log(passes);
    DriftingQuantile quantile = posterior.drifting(probability);
    double[] doses = new double[lnIntensity.length];
    for (int k = 0; k < doses.length; k++) {
      double here = lnIntensity[k];
      doses[k] =
          quantile.next(posterior.perDraw(i -> posterior.lnDose(i, offset[i], here, lnPasses)));
    }
    return doses;
  }

  /** Limits of {@code count} equally weighted draws at one place, in draw order. */
  public double[] sample(int count, double lnIntensity, int passes) {
    double lnPasses = Math.log(passes);
    int[] draws = posterior.resample(count);
    double[] limits = new double[count];
    for (int k = 0; k < count; k++) {
      limits[k] = posterior.lnDose(draws[k], offset[draws[k]], lnIntensity, lnPasses);
    }
    return limits;
  }

  /**
   * Passes by which the chance is reached at a dose and an intensity, at least 1.
   *
   * @param lnDose natural logarithm of the dose per pass in J/cm²
   * @param lnIntensity natural logarithm of fluence or irradiance
   */
  public Estimate passes(double lnDose, double lnIntensity) {
    double[] passes =
        posterior.perDraw(
            i ->
                Math.max(
                    1,
                    Math.exp(
                        (posterior.lnDose(i, offset[i], lnIntensity, 0) - lnDose)
                            / posterior.psi(i))));
    return new Estimate(
        posterior.quantile(passes, 0.5),
        posterior.quantile(passes, 0.05),
        posterior.quantile(passes, 0.95));
  }
}
