package charline.stat.sampling;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Draws of n variables with weights that add up to 1.
 *
 * @param points draws, one row each
 * @param weights one per row, 0 or more, adding up to 1
 */
public record WeightedDraws(double[][] points, double[] weights) {
  public WeightedDraws {
    if (points.length != weights.length || points.length == 0) {
      throw new IllegalArgumentException(
          "There must be one weight per draw and at least one draw, not %d weights for %d draws."
              .formatted(weights.length, points.length));
    }
  }

  public int size() {
    return weights.length;
  }

  /** Kish's effective number of draws, 1 / Σ w². */
  public double effectiveSize() {
    double sum = 0;
    for (double w : weights) {
      sum += w * w;
    }
    return 1 / sum;
  }

  /** Weighted mean of values, one per draw. */
  public static double mean(double[] values, double[] weights) {
    double sum = 0;
    for (int i = 0; i < values.length; i++) {
      sum += weights[i] * values[i];
    }
    return sum;
  }

  /**
   * The value at which the weight of all values up to and including it reaches {@code probability}.
   * Selects in place of sorting: linear time on average.
   *
   * @param values one per draw, finite or infinite, not NaN; left as they are
   * @param weights one per draw, adding up to 1
   * @param probability inside (0, 1)
   */
  public static double quantile(double[] values, double[] weights, double probability) {
    return WeightedSelection.quantile(values, weights, probability);
  }

  /**
   * Systematic resampling to equal weights (Kitagawa 1996): draw i is taken floor or ceiling of m
   * wi times.
   *
   * @param count m, how many to take
   * @return indices of draws, rising
   */
  public int[] resample(int count) {
    int[] chosen = new int[count];
    double reached = weights[0];
    int draw = 0;
    for (int k = 0; k < count; k++) {
      double target = (k + 0.5) / count;
      while (reached < target && draw < weights.length - 1) {
        reached += weights[++draw];
      }
      chosen[k] = draw;
    }
    return chosen;
  }

  /**
   * These draws and others of the same variables together.
   *
   * @param weight weight of the others, 0 to 1
   */
  public WeightedDraws mixedWith(WeightedDraws others, double weight) {
    int n = size();
    double[][] both = Arrays.copyOf(points, n + others.size());
    System.arraycopy(others.points, 0, both, n, others.size());
    double[] shares = new double[both.length];
    Arrays.setAll(shares, i -> i < n ? (1 - weight) * weights[i] : weight * others.weights[i - n]);
    return new WeightedDraws(both, shares);
  }

  /** Values of one variable, one per draw. */
  public double[] column(int variable) {
    return IntStream.range(0, size()).mapToDouble(i -> points[i][variable]).toArray();
  }
}
