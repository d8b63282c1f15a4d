package charline.stat.quadrature;

/**
 * Trapezoidal rules for the mean of a function of a standard normal variable, E g(X) = Σ w g(x):
 * nodes evenly spaced to six standard deviations either side, weights in proportion to the density.
 *
 * <p>Where g varies within a part of a standard deviation these are far better than a Gauss-Hermite
 * rule of as many points, whose nodes are spent on tails: against a peak whose standard deviation
 * is s the error falls as exp(-2π² s²/h²) with the spacing h (Trefethen and Weideman 2014, SIAM
 * Review 56:385-458).
 */
public final class NormalTrapezoid {
  private static final double REACH = 6;
  private static final double WIDEST = 0.5;

  /** Spacing in standard deviations of the narrowest peak; leaves an error of about 1e-6. */
  private static final double SPACING_IN_PEAKS = 1.2;

  /** From a spacing of 0.5, each with half the spacing of the one before. */
  private static final NormalTrapezoid[] RULES = new NormalTrapezoid[5];

  static {
    for (int k = 0; k < RULES.length; k++) {
      RULES[k] = new NormalTrapezoid(WIDEST / (1 << k));
    }
  }

  private final double spacing;
  private final double[] nodes;
  private final double[] weights;

  private NormalTrapezoid(double spacing) {
    this.spacing = spacing;
    int wing = (int) Math.round(REACH / spacing);
    nodes = new double[2 * wing + 1];
    weights = new double[nodes.length];
    double total = 0;
    for (int q = 0; q < nodes.length; q++) {
      nodes[q] = (q - wing) * spacing;
      weights[q] = Math.exp(-nodes[q] * nodes[q] / 2);
      total += weights[q];
    }
    for (int q = 0; q < nodes.length; q++) {
      weights[q] /= total;
    }
  }

  /**
   * The coarsest rule that is fine enough for the likelihood of a shift shared by successes and
   * failures of a logistic regression. Under the normal density its peak is nowhere narrower than 1
   * / √(1 + n r²/4), as no trial bends the log likelihood by more than r²/4. Beyond n r² = 5,900 it
   * is the finest there is, of 193 nodes a side.
   *
   * @param trials how many successes and failures, n
   * @param steepness change of the log odds with one standard deviation of the shift, r
   */
  public static NormalTrapezoid forLogistic(int trials, double steepness) {
    double peak = 1 / Math.sqrt(1 + trials * steepness * steepness / 4);
    double spacing = WIDEST;
    int k = 0;
    while (spacing > SPACING_IN_PEAKS * peak && k < RULES.length - 1) {
      spacing /= 2;
      k++;
    }
    return RULES[k];
  }

  public int points() {
    return nodes.length;
  }

  public double node(int q) {
    return nodes[q];
  }

  /** Weight of a node; the weights add up to 1. */
  public double weight(int q) {
    return weights[q];
  }

  /**
   * exp(r x) at every node x. As nodes are evenly spaced these are powers of one number: two
   * multiplications a node in place of an exponential, with a relative error below 1e-13.
   *
   * @param rate r, of any sign
   * @param most ln of the largest number wanted, positive: larger ones are cut to exp(most), and as
   *     small ones to exp(-most)
   */
  public double[] exponentials(double rate, double most) {
    double[] at = new double[nodes.length];
    if (!(Math.abs(rate) * REACH <= most)) {
      for (int q = 0; q < at.length; q++) {
        at[q] = Math.exp(Math.max(-most, Math.min(most, rate * nodes[q])));
      }
      return at;
    }
    int middle = at.length / 2;
    double step = Math.exp(rate * spacing);
    double stepBack = 1 / step;
    double up = 1;
    double down = 1;
    at[middle] = 1;
    for (int k = 1; k <= middle; k++) {
      up *= step;
      down *= stepBack;
      at[middle + k] = up;
      at[middle - k] = down;
    }
    return at;
  }
}
