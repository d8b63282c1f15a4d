package charline.stat.distribution;

/**
 * Distribution of a count that is 0 to n.
 *
 * @param probability of each count, n + 1 values adding up to 1
 */
public record CountDistribution(double[] probability) {
  private static final double NOTHING = 1e-20;

  /**
   * The number of successes in independent trials of unequal chance, by convolution (Poisson's
   * binomial). Counts of less than 1e-20 at either end are left at 0, which keeps many trials from
   * costing their square.
   */
  public static double[] ofTrials(double[] chances) {
    double[] p = new double[chances.length + 1];
    p[0] = 1;
    int low = 0;
    int high = 0;
    for (double chance : chances) {
      high++;
      for (int k = high; k > low; k--) {
        p[k] = p[k] * (1 - chance) + p[k - 1] * chance;
      }
      p[low] *= 1 - chance;
      while (p[low] < NOTHING && low < high) {
        p[low++] = 0;
      }
      while (p[high] < NOTHING && high > low) {
        p[high--] = 0;
      }
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
