package charline.model;

import charline.stat.distribution.Logistic;

/**
 * A coordinate without bounds for a parameter that may not fall below 0: s ln(1 + e^(x/s)).
 * Straight well above s, so that a normal posterior stays normal, and bent only where the bound is
 * near.
 *
 * @param scale s, in the unit of the parameter
 */
record Softplus(double scale) {
  double value(double x) {
    return -scale * Logistic.logCdf(-x / scale);
  }

  /** First derivative. */
  double slope(double x) {
    return Logistic.cdf(x / scale);
  }

  /** Second derivative. */
  double bend(double x) {
    return Logistic.cdf(x / scale) * Logistic.cdf(-x / scale) / scale;
  }

  /** The coordinate of a value above 0. */
  double coordinate(double value) {
    return scale * Math.log(Math.expm1(value / scale));
  }

  /** ln of the slope: what the change of coordinate adds to a log density. */
  double logJacobian(double x) {
    return Logistic.logCdf(x / scale);
  }

  /** First derivative of {@link #logJacobian}. */
  double logJacobianSlope(double x) {
    return Logistic.cdf(-x / scale) / scale;
  }

  /** Second derivative of {@link #logJacobian}. */
  double logJacobianBend(double x) {
    return -bend(x) / scale;
  }
}
