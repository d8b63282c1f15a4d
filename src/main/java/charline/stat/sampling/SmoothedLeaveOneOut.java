package charline.stat.sampling;

import java.util.Arrays;

/**
 * What a posterior says of one observation when that observation is taken out of it, without a new
 * fit: draws are weighted by the inverse of the likelihood they give it, the weights smoothed
 * (Vehtari, Gelman and Gabry 2017, Practical Bayesian model evaluation using leave-one-out
 * cross-validation and WAIC, Statistics and Computing 27:1413-1432, section 2.1).
 *
 * @param weights of the draws once the observation is out, adding up to 1
 * @param logDensity ln of the observation's predictive density given all the others
 * @param kHat shape of the weights' tail; above the limit the observation moves the posterior too
 *     far for its draws to tell, and it takes a new fit
 */
public record SmoothedLeaveOneOut(double[] weights, double logDensity, double kHat) {

  /**
   * Takes one observation out.
   *
   * @param logLikelihood ln of the observation's density given all the others and the draw, one per
   *     equally weighted draw, all finite
   */
  public static SmoothedLeaveOneOut of(double[] logLikelihood) {
    ParetoSmoothing smoothed =
        ParetoSmoothing.of(Arrays.stream(logLikelihood).map(l -> -l).toArray());
    return new SmoothedLeaveOneOut(
        smoothed.weights(), logMean(logLikelihood, smoothed.weights()), smoothed.kHat());
  }

  /** The same where the draws already are those of a fit to the others: equal weights. */
  public static SmoothedLeaveOneOut refitted(double[] logLikelihood, double kHat) {
    double[] equal = new double[logLikelihood.length];
    Arrays.fill(equal, 1.0 / equal.length);
    return new SmoothedLeaveOneOut(equal, logMean(logLikelihood, equal), kHat);
  }

  /**
   * Largest k-hat with which so many draws can be relied on: 1 - 1 / log10(draws), at most 0.7
   * (Vehtari, Simpson, Gelman, Yao and Gabry 2024, section 3.2.4).
   */
  public static double kHatLimit(int draws) {
    return Math.min(0.7, 1 - 1 / Math.log10(draws));
  }

  /** Mean of a quantity given per draw. */
  public double mean(double[] perDraw) {
    return WeightedDraws.mean(perDraw, weights);
  }

  private static double logMean(double[] logs, double[] weights) {
    double top = Arrays.stream(logs).max().orElseThrow();
    double sum = 0;
    for (int i = 0; i < logs.length; i++) {
      sum += weights[i] * Math.exp(logs[i] - top);
    }
    return top + Math.log(sum);
  }
}
