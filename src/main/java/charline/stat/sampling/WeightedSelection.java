package charline.stat.sampling;

/**
 * Selection on weighted values: what a full sort would find, in linear time on average. Many values
 * are first told apart by many equal bins of their range; Hoare's selection then goes on in the one
 * bin that holds the answer.
 */
final class WeightedSelection {
  private static final int BINS = 2048;

  private final double[] values;
  private final double[] weights;
  private final int count;

  /** On the first values and weights of these arrays, which it puts into another order. */
  private WeightedSelection(double[] values, double[] weights, int count) {
    this.values = values;
    this.weights = weights;
    this.count = count;
  }

  /** Smallest value at which the cumulative weight reaches the probability. */
  static double quantile(double[] values, double[] weights, double probability) {
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (double value : values) {
      least = Math.min(least, value);
      most = Math.max(most, value);
    }
    double perUnit = BINS / (most - least);
    if (values.length < BINS || !(perUnit > 0 && perUnit < Double.MAX_VALUE)) {
      return new WeightedSelection(values.clone(), weights.clone(), values.length)
          .from(0, probability);
    }
    double[] bins = new double[BINS];
    int[] counts = new int[BINS];
    for (int i = 0; i < values.length; i++) {
      int bin = bin(values[i], least, perUnit);
      bins[bin] += weights[i];
      counts[bin]++;
    }
    double below = 0;
    int bin = 0;
    while (bin < BINS - 1 && below + bins[bin] < probability) {
      below += bins[bin++];
    }
    double[] chosen = new double[counts[bin]];
    double[] theirs = new double[chosen.length];
    int count = 0;
    for (int i = 0; count < chosen.length; i++) {
      if (bin(values[i], least, perUnit) == bin) {
        chosen[count] = values[i];
        theirs[count++] = weights[i];
      }
    }
    return new WeightedSelection(chosen, theirs, count).from(below, probability);
  }

  /** The quantile where it lies between two values, in one look at all of them; else NaN. */
  static double quantileBetween(
      double from, double to, double[] values, double[] weights, double probability) {
    double[] chosen = new double[values.length];
    double[] theirs = new double[values.length];
    int count = 0;
    double below = 0;
    double between = 0;
    for (int i = 0; i < values.length; i++) {
      if (values[i] < from) {
        below += weights[i];
      } else if (values[i] <= to) {
        between += weights[i];
        chosen[count] = values[i];
        theirs[count++] = weights[i];
      }
    }
    return below < probability && below + between >= probability
        ? new WeightedSelection(chosen, theirs, count).from(below, probability)
        : Double.NaN;
  }

  private static int bin(double value, double least, double perUnit) {
    return Math.min(BINS - 1, (int) ((value - least) * perUnit));
  }

  /**
   * The quantile among these values.
   *
   * @param below weight of all values that lie below these
   */
  private double from(double below, double probability) {
    int low = 0;
    int high = count - 1;
    while (low < high) {
      double pivot = medianOfThree(low, (low + high) >>> 1, high);
      int less = low;
      int i = low;
      int greater = high;
      double weightLess = 0;
      double weightEqual = 0;
      while (i <= greater) {
        if (values[i] < pivot) {
          weightLess += weights[i];
          swap(less++, i++);
        } else if (values[i] > pivot) {
          swap(i, greater--);
        } else {
          weightEqual += weights[i++];
        }
      }
      if (below + weightLess >= probability) {
        high = less - 1;
      } else if (below + weightLess + weightEqual >= probability || greater == high) {
        return pivot;
      } else {
        below += weightLess + weightEqual;
        low = greater + 1;
      }
    }
    return values[low];
  }

  private double medianOfThree(int a, int b, int c) {
    double x = values[a];
    double y = values[b];
    double z = values[c];
    return Math.max(Math.min(x, y), Math.min(Math.max(x, y), z));
  }

  private void swap(int a, int b) {
    double v = values[a];
    values[a] = values[b];
    values[b] = v;
    double w = weights[a];
    weights[a] = weights[b];
    weights[b] = w;
  }
}
