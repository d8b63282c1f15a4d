package charline.stat.distribution;

/** The standard logistic distribution, without overflow or cancellation for any finite argument. */
public final class Logistic {
  private Logistic() {}

  /** Distribution function 1 / (1 + e^-z). */
  public static double cdf(double z) {
    if (z >= 0) {
      return 1 / (1 + Math.exp(-z));
    }
    double e = Math.exp(z);
    return e / (1 + e);
  }

  /** Logarithm of the distribution function, -ln(1 + e^-z). */
  public static double logCdf(double z) {
    return z >= 0 ? -Math.log1p(Math.exp(-z)) : z - Math.log1p(Math.exp(z));
  }

  /** Density e^-z / (1 + e^-z)², which is the distribution function times its complement. */
  public static double density(double z) {
    return cdf(z) * cdf(-z);
  }

  /** Quantile ln(p / (1 - p)), p inside (0, 1). */
  public static double quantile(double p) {
    return Math.log(p / (1 - p));
  }
}
