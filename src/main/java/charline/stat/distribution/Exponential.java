package charline.stat.distribution;

/** The standard exponential distribution. */
public final class Exponential {
  /** From here on the distribution function is a half or more, and the difference keeps digits. */
  private static final double MEDIAN = Math.log(2);

  private Exponential() {}

  /**
   * Distribution function 1 - e^-x, x not below 0, without cancellation. Of the two ways to it,
   * Java has fast code for one.
   */
  public static double cdf(double x) {
    return x < MEDIAN ? -Math.expm1(-x) : 1 - Math.exp(-x);
  }
}
