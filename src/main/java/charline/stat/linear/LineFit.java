package charline.stat.linear;

import charline.stat.interval.FiellerSet;
import charline.stat.interval.Interval;
import java.util.Optional;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * A straight line through points.
 *
 * @param intercept value at x = 0
 * @param slope per unit of x
 * @param interceptStandardError of the intercept
 * @param slopeStandardError of the slope
 * @param covariance of intercept and slope
 * @param residualSumOfSquares about the line
 * @param totalSumOfSquares about the mean
 * @param degreesOfFreedom points less 2, at least 1
 */
public record LineFit(
    double intercept,
    double slope,
    double interceptStandardError,
    double slopeStandardError,
    double covariance,
    double residualSumOfSquares,
    double totalSumOfSquares,
    int degreesOfFreedom) {

  /** Standard deviation about the line. */
  public double residualStandardDeviation() {
    return Math.sqrt(residualSumOfSquares / degreesOfFreedom);
  }

  /** Share of the sum of squares that the line explains; 0 where y does not vary. */
  public double rSquared() {
    return totalSumOfSquares == 0 ? 0 : 1 - residualSumOfSquares / totalSumOfSquares;
  }

  /**
   * Where the line meets zero. For the ablation law {@code depth = (1/alpha) ln(F / Fth)}, a line
   * in ln F, this is ln Fth.
   *
   * @param x estimate, -intercept/slope
   * @param deltaStandardError by the delta method; too small where the slope is poorly known
   * @param fieller Fieller's set, with Student's t
   */
  public record Crossing(double x, double deltaStandardError, FiellerSet fieller) {}

  /**
   * The crossing with its confidence set; empty for a level line.
   *
   * @param confidence two-sided, between 0 and 1; 0.90 gives a one-sided 95 % bound at each end
   */
  public Optional<Crossing> crossing(double confidence) {
    Interval.requireConfidence(confidence);
    if (slope == 0) {
      return Optional.empty();
    }
    double x = -intercept / slope;
    double varianceA = interceptStandardError * interceptStandardError;
    double varianceB = slopeStandardError * slopeStandardError;
    double variance = varianceA + 2 * x * covariance + x * x * varianceB;
    double t =
        new TDistribution(null, degreesOfFreedom, 1e-14)
            .inverseCumulativeProbability(0.5 + confidence / 2);
    return Optional.of(
        new Crossing(
            x,
            Math.sqrt(Math.max(variance, 0)) / Math.abs(slope),
            FiellerSet.of(intercept, slope, varianceA, covariance, varianceB, t)));
  }
}
