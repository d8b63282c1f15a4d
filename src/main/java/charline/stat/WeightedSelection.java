package charline.stat;

/** Hoare's selection on weighted values: what a full sort would find, in linear time on average. */
final class WeightedSelection {
  private final double[] values;
  private final double[] weights;

  private WeightedSelection(double[] values, double[] weights) {
    this.values = values;
    this.weights = weights;
  }

  static WeightedSelection of(double[] values, double[] weights) {
    return new WeightedSelection(values.clone(), weights.clone());
  }

  /** Smallest value at which the cumulative weight reaches the probability. */
  double quantile(double probability) {
    int low = 0;
    int high = values.length - 1;
    double below = 0; // weight of all values left of low
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
