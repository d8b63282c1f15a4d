package charline.model;

import charline.quantity.Invariant;

/**
 * A bell with heavy tails, Student's t with four degrees of freedom: as sure as a normal near its
 * centre, and soon out of the way where data lie far off.
 *
 * @param centre centre
 * @param scale half-width in which t is 1; above 0
 */
public record HeavyTailedNormal(double centre, double scale) {
  private static final double DEGREES = 4;

  public HeavyTailedNormal {
    Invariant.positive("Prior spread", scale, "");
  }

  /** Log density up to a constant. */
  double logDensity(double x) {
    double z = (x - centre) / scale;
    return -(DEGREES + 1) / 2 * Math.log1p(z * z / DEGREES);
  }

  /** First derivative of {@link #logDensity}. */
  double slope(double x) {
    double z = (x - centre) / scale;
    return -(DEGREES + 1) * z / (DEGREES + z * z) / scale;
  }

  /** Second derivative of {@link #logDensity}. */
  double bend(double x) {
    double z = (x - centre) / scale;
    double room = DEGREES + z * z;
    return -(DEGREES + 1) * (DEGREES - z * z) / (room * room) / (scale * scale);
  }
}
