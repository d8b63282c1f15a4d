package charline.stat.sampling;

import charline.stat.distribution.GeneralisedPareto;
import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * Pareto-smoothed importance weights (Vehtari, Simpson, Gelman, Yao and Gabry 2024, Pareto smoothed
 * importance sampling, JMLR 25(72)): the largest weights are replaced by the order statistics of a
 * generalised Pareto distribution fitted to them, and its shape k-hat tells whether they can be
 * trusted.
 *
 * @param weights smoothed weights, adding up to 1, in the order given
 * @param kHat shape of the fitted tail; infinite where the tail cannot be fitted
 */
public record ParetoSmoothing(double[] weights, double kHat) {
  private static final int SMALLEST_TAIL = 5;

  /**
   * Smooths weights.
   *
   * @param logWeights logarithms of the raw weights, up to a constant; negative infinity is a
   *     weight of zero
   */
  public static ParetoSmoothing of(double[] logWeights) {
    int n = logWeights.length;
    double top = Arrays.stream(logWeights).max().orElseThrow();
    if (!(top > Double.NEGATIVE_INFINITY) || top == Double.POSITIVE_INFINITY) {
      throw new IllegalArgumentException(
          "At least one weight must be above zero and all finite; the largest log weight is "
              + top
              + ".");
    }
    double[] weights = Arrays.stream(logWeights).map(l -> Math.exp(l - top)).toArray();
    int tail = (int) Math.min(Math.ceil(0.2 * n), Math.ceil(3 * Math.sqrt(n)));
    double kHat = tail < SMALLEST_TAIL ? Double.POSITIVE_INFINITY : smoothTail(weights, tail);
    double sum = Arrays.stream(weights).sum();
    return new ParetoSmoothing(Arrays.stream(weights).map(w -> w / sum).toArray(), kHat);
  }

  /** Replaces the largest {@code tail} weights in place and returns k-hat. */
  private static double smoothTail(double[] weights, int tail) {
    int n = weights.length;
    double[] sorted = weights.clone();
    Arrays.sort(sorted);
    double cutoff = sorted[n - tail - 1];
    double largest = sorted[n - 1];
    // Only the tail needs to be known by its places; equal weights keep their order.
    int[] above =
        IntStream.range(0, n)
            .filter(i -> weights[i] >= cutoff)
            .boxed()
            .sorted(Comparator.comparingDouble(i -> weights[i]))
            .mapToInt(i -> i)
            .toArray();
    int[] rank = Arrays.copyOfRange(above, above.length - tail, above.length);
    double[] excess = Arrays.stream(rank).mapToDouble(i -> weights[i] - cutoff).toArray();
    if (!(excess[tail - 1] > 0) || !(excess[0] > 0 || excess[tail / 4] > 0)) {
      // Equal weights have no tail; a tail of zeros cannot be fitted.
      return excess[tail - 1] > 0 ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
    }
    GeneralisedPareto fit = GeneralisedPareto.fit(excess);
    for (int j = 0; j < tail; j++) {
      double smoothed = cutoff + fit.quantile((j + 0.5) / tail);
      weights[rank[j]] = Math.min(smoothed, largest);
    }
    return fit.shape();
  }
}
