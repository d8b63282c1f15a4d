package charline.stat.distribution;

import java.util.Arrays;

/**
 * The generalised Pareto distribution above zero.
 *
 * @param shape k; the tail falls as x^(-1/k) for k above 0
 * @param scale σ, above 0
 */
public record GeneralisedPareto(double shape, double scale) {
  /**
   * Fits by the empirical Bayes method of Zhang and Stephens (2009, Technometrics 51:316-325), with
   * the shape drawn towards 0.5 by the weight of ten observations as in Vehtari et al. (2024).
   *
   * @param sorted excesses over the threshold, rising, not all zero
   */
  public static GeneralisedPareto fit(double[] sorted) {
    int n = sorted.length;
    int grid = 30 + (int) Math.sqrt(n);
    double quartile = sorted[(int) Math.floor(n / 4.0 + 0.5) - 1];
    if (!(quartile > 0)) {
      quartile = Arrays.stream(sorted).filter(x -> x > 0).findFirst().orElseThrow();
    }
    double[] theta = new double[grid];
    double[] profile = new double[grid];
    for (int j = 0; j < grid; j++) {
      theta[j] = 1 / sorted[n - 1] + (1 - Math.sqrt(grid / (j + 0.5))) / (3 * quartile);
      double k = -meanLog1p(sorted, -theta[j]);
      profile[j] = n * (Math.log(theta[j] / k) + k - 1);
    }
    double thetaMean = 0;
    for (int j = 0; j < grid; j++) {
      double relative = 0;
      for (int i = 0; i < grid; i++) {
        relative += Math.exp(profile[i] - profile[j]);
      }
      thetaMean += theta[j] / relative;
    }
    double shape = meanLog1p(sorted, -thetaMean);
    double scale = -shape / thetaMean;
    return new GeneralisedPareto((n * shape + 10 * 0.5) / (n + 10), scale);
  }

  /** Value below which a share {@code p} lies, p inside (0, 1). */
  public double quantile(double p) {
    return Math.abs(shape) < 1e-12
        ? -scale * Math.log1p(-p)
        : scale * Math.expm1(-shape * Math.log1p(-p)) / shape;
  }

  private static double meanLog1p(double[] values, double factor) {
    double sum = 0;
    double product = 1; // few logarithms: of products, while they last
    for (double x : values) {
      product *= 1 + factor * x;
      if (product < 1e-100 || product > 1e100) {
        sum += Math.log(product);
        product = 1;
      }
    }
    return (sum + Math.log(product)) / values.length;
  }
}
