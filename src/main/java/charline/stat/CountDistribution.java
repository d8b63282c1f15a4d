package charline.stat;

/**
 * Distribution of a count that is 0 to n.
 *
 * @param probability of each count, n + 1 values adding up to 1
 */
public record CountDistribution(double[] probability) {

  /**
   * The number of successes in independent trials of unequal chance, by convolution (Poisson's
   * binomial).
   */
  public static double[] ofTrials(double[] chances) {
    double[] p = new double[chances.length + 1];
    p[0] = 1;
    for (int t = 0; t < chances.length; t++) {
      for (int k = t + 1; k > 0; k--) {
        p[k] = p[k] * (1 - chances[t]) + p[k - 1] * chances[t];
      }
      p[0] *= 1 - chances[t];
    }
    return p;
  }

  public double mean() {
    double sum = 0;
    for (int k = 1; k < probability.length; k++) {
      sum += k * probability[k];
    }
    return sum;
  }

  /** Smallest count that is not exceeded with probability {@code p}. */
  public int quantile(double p) {
    double sum = 0;
    for (int k = 0; k < probability.length; k++) {
      sum += probability[k];
      if (sum >= p - 1e-12) {
        return k;
      }
    }
    return probability.length - 1;
  }

  /**
   * Two-sided tail probability of a count: twice the smaller tail, with half of the count's own
   * probability in either (Lancaster 1961, Significance tests in discrete distributions, JASA
   * 56:223-234).
   */
  public double tail(int count) {
    double below = probability[count] / 2;
    for (int k = 0; k < count; k++) {
      below += probability[k];
    }
    return Math.max(0, Math.min(1, 2 * Math.min(below, 1 - below)));
  }
}
