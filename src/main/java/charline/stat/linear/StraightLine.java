package charline.stat.linear;

/**
 * A straight line by least squares. Sums are taken about the means, so that certified data agree to
 * 1e-9 of each value.
 */
public final class StraightLine {
  private StraightLine() {}

  /**
   * Fits {@code y = intercept + slope x}.
   *
   * @param x at least three values, not all equal
   * @param y as many
   * @throws IllegalArgumentException if the lengths differ, there are fewer than three rows, a
   *     number is not finite, or x does not vary
   */
  public static LineFit fit(double[] x, double[] y) {
    requirePairs(x, y);
    int n = x.length;
    double meanX = mean(x);
    double meanY = mean(y);
    double sxx = 0;
    double sxy = 0;
    double syy = 0;
    for (int i = 0; i < n; i++) {
      double dx = x[i] - meanX;
      double dy = y[i] - meanY;
      sxx += dx * dx;
      sxy += dx * dy;
      syy += dy * dy;
    }
    if (!(sxx > 0)) {
      throw new IllegalArgumentException(
          "x must vary to draw a line, but every value is " + x[0] + "; measure at another x.");
    }
    double slope = sxy / sxx;
    double rss = 0;
    for (int i = 0; i < n; i++) {
      double residual = (y[i] - meanY) - slope * (x[i] - meanX);
      rss += residual * residual;
    }
    double variance = rss / (n - 2);
    return new LineFit(
        meanY - slope * meanX,
        slope,
        Math.sqrt(variance * (1.0 / n + meanX * meanX / sxx)),
        Math.sqrt(variance / sxx),
        -variance * meanX / sxx,
        rss,
        syy,
        n - 2);
  }

  private static void requirePairs(double[] x, double[] y) {
    if (x.length != y.length) {
      throw new IllegalArgumentException(
          "x and y must have one length, not %d and %d.".formatted(x.length, y.length));
    }
    if (x.length < 3) {
      throw new IllegalArgumentException(
          "A line with errors needs at least 3 points, not " + x.length + "; measure more.");
    }
    for (int i = 0; i < x.length; i++) {
      if (!Double.isFinite(x[i]) || !Double.isFinite(y[i])) {
        throw new IllegalArgumentException(
            "Points must be finite numbers, not (%s, %s) in row %d; leave the row out."
                .formatted(x[i], y[i], i + 1));
      }
    }
  }

  private static double mean(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    double first = sum / values.length;
    double rest = 0; // a second pass takes out the rounding of the first
    for (double value : values) {
      rest += value - first;
    }
    return first + rest / values.length;
  }
}
