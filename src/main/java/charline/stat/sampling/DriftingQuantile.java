package charline.stat.sampling;

/**
 * One quantile of values that move by about the same from each set to the next, as those of a
 * straight line in even steps. It is looked for where the last two lead to, which takes one look at
 * the values; where it is not there, all are searched. The result is the same either way.
 */
public final class DriftingQuantile {
  /** Of the standard deviation: some of a hundred values lie so near to a quantile. */
  private static final double NEAR = 1 / 16.0;

  private final double[] weights;
  private final double probability;
  private double room = Double.NaN;
  private double last = Double.NaN;
  private double before = Double.NaN;

  /**
   * @param weights one per value, adding up to 1
   * @param probability inside (0, 1)
   */
  public DriftingQuantile(double[] weights, double probability) {
    this.weights = weights;
    this.probability = probability;
  }

  /**
   * The quantile of the next values.
   *
   * @param values as {@link WeightedDraws#quantile} takes them
   */
  public double next(double[] values) {
    if (Double.isNaN(last)) {
      room = NEAR * Math.sqrt(variance(values));
    }
    double guess = 2 * last - before;
    double found =
        WeightedSelection.quantileBetween(guess - room, guess + room, values, weights, probability);
    before = last;
    last = Double.isNaN(found) ? WeightedDraws.quantile(values, weights, probability) : found;
    return last;
  }

  private double variance(double[] values) {
    double mean = WeightedDraws.mean(values, weights);
    double sum = 0;
    for (int i = 0; i < values.length; i++) {
      sum += weights[i] * (values[i] - mean) * (values[i] - mean);
    }
    return sum;
  }
}
