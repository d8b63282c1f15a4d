package charline.model;

import charline.quantity.Invariant;
import charline.stat.distribution.StandardNormal;
import java.util.function.DoubleUnaryOperator;

/**
 * A log-normal prior of the spread between boards.
 *
 * @param median in ln dose
 * @param lnFactor standard deviation of its logarithm
 */
public record LogNormalSpread(double median, double lnFactor) implements SpreadPrior {
  private static final double HALF_LN_TWO_PI = Math.log(2 * Math.PI) / 2;

  public LogNormalSpread {
    Invariant.positive("Prior median of the spread of boards", median, "");
    Invariant.positive("Prior factor of the spread of boards", lnFactor, "");
  }

  /** The one with this median and this 95 % quantile, which lies above it. */
  static LogNormalSpread through(double median, double q95) {
    return new LogNormalSpread(median, Math.log(q95 / median) / StandardNormal.quantile(0.95));
  }

  @Override
  public double logDensity(double omega) {
    double z = z(omega);
    return -z * z / 2 - HALF_LN_TWO_PI - Math.log(lnFactor * omega);
  }

  /** Logarithm of the density of ω, as a function of ln ω, for many of them. */
  DoubleUnaryOperator logDensityOfLn() {
    double lnMedian = Math.log(median);
    double constant = -HALF_LN_TWO_PI - Math.log(lnFactor);
    return lnOmega -> {
      double z = (lnOmega - lnMedian) / lnFactor;
      return constant - z * z / 2 - lnOmega;
    };
  }

  private double z(double omega) {
    return Math.log(omega / median) / lnFactor;
  }

  @Override
  public double slope(double omega) {
    return -(1 + z(omega) / lnFactor) / omega;
  }

  @Override
  public double bend(double omega) {
    return (1 + (z(omega) - 1 / lnFactor) / lnFactor) / (omega * omega);
  }

  /** Probability of a spread below {@code omega}. */
  double below(double omega) {
    return StandardNormal.below(z(omega));
  }

  @Override
  public double quantile(double probability) {
    return median * Math.exp(lnFactor * StandardNormal.quantile(probability));
  }

  @Override
  public double rootMeanSquare() {
    return median * Math.exp(lnFactor * lnFactor);
  }

  @Override
  public SpreadPrior widened(double factor) {
    return new LogNormalSpread(factor * median, lnFactor);
  }
}
