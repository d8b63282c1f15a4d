package charline.model.way;

import charline.quantity.Invariant;

/**
 * A bell with heavy tails, Student's t with four degrees of freedom, of one weight or of several
 * together: as sure as a normal near its centre, and soon out of the way where data lie far off.
 *
 * @param centre centre of each weight
 * @param scale half-width in which t is 1; above 0
 */
public record HeavyTailedNormal(double centre, double scale) {
  private static final double DEGREES = 4;

  public HeavyTailedNormal {
    Invariant.positive("Prior spread", scale, "");
  }

  private double distance(double[] x, int from, int count) {
    double distance = 0;
    for (int k = from; k < from + count; k++) {
      double z = (x[k] - centre) / scale;
      distance += z * z;
    }
    return distance;
  }

  /**
   * Log density up to a constant of the weights {@code x[from]} to {@code x[from + count - 1]}
   * together, which looks the same from every side.
   */
  public double logDensity(double[] x, int from, int count) {
    return -(DEGREES + count) / 2 * Math.log1p(distance(x, from, count) / DEGREES);
  }

  /**
   * Adds the value, slopes and bends of {@link #logDensity} at the places of the weights.
   *
   * @return the value
   */
  public double expand(double[] x, int from, int count, double[] gradient, double[][] hessian) {
    double room = DEGREES + distance(x, from, count);
    double pull = (DEGREES + count) / room;
    for (int k = from; k < from + count; k++) {
      double z = (x[k] - centre) / scale;
      gradient[k] -= pull * z / scale;
      hessian[k][k] -= pull / (scale * scale);
      for (int j = from; j < from + count; j++) {
        double other = (x[j] - centre) / scale;
        hessian[k][j] += 2 * pull * z * other / (room * scale * scale);
      }
    }
    return logDensity(x, from, count);
  }
}
