package charline.stat.interval;

/**
 * Fieller's confidence set for the place x where {@code a + b x} is zero, a and b estimated with
 * normal errors (Fieller 1954, JRSS B 16:175-185): all x with {@code (a + b x)² ≤ t² var(a + b x)}.
 * Where the slope b is not told from zero, g ≥ 1, the set has no two finite ends.
 */
public sealed interface FiellerSet {

  /** How badly the slope is known: t² var(b) / b²; 1 or more means no finite interval. */
  double g();

  /** An ordinary interval. */
  record Finite(double lower, double upper, double g) implements FiellerSet {}

  /** All values but those strictly between two roots. */
  record Exclusive(double below, double above, double g) implements FiellerSet {}

  /** Every value agrees with the data. */
  record WholeLine(double g) implements FiellerSet {}

  /**
   * Solves the quadratic.
   *
   * @param a value of the line at x = 0
   * @param b slope, not 0
   * @param varianceA of a
   * @param covariance of a and b
   * @param varianceB of b
   * @param t quantile, above 0
   */
  static FiellerSet of(
      double a, double b, double varianceA, double covariance, double varianceB, double t) {
    double g = t * t * varianceB / (b * b);
    double squared = b * b - t * t * varianceB;
    double linear = a * b - t * t * covariance; // half of it
    double constant = a * a - t * t * varianceA;
    double discriminant = linear * linear - squared * constant;
    if (discriminant < 0) {
      return new WholeLine(g);
    }
    double stable = -(linear + Math.copySign(Math.sqrt(discriminant), linear));
    double one = stable / squared;
    double other = stable == 0 ? -one : constant / stable;
    double low = Math.min(one, other);
    double high = Math.max(one, other);
    return squared > 0 ? new Finite(low, high, g) : new Exclusive(low, high, g);
  }
}
