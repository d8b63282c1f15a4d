package charline.stat.survival;

import charline.stat.distribution.StandardNormal;
import charline.stat.interval.Interval;
import charline.stat.linear.Term;
import charline.stat.linear.Vectors;
import java.util.Arrays;
import java.util.List;

/**
 * A log-logistic regression that has converged.
 *
 * @param terms one per column of the design; effects on the natural logarithm of time
 * @param scale of the logistic noise on that logarithm, above 0
 * @param logScaleError standard error of ln scale
 * @param covariance of the coefficients and, last, ln scale; from the observed information
 * @param logLikelihood exact times counted by their density in units of time
 */
public record LogLogisticFit(
    List<Term> terms,
    double scale,
    double logScaleError,
    double[][] covariance,
    double logLikelihood)
    implements LogLogisticOutcome {
  public LogLogisticFit {
    terms = List.copyOf(terms);
    covariance = Vectors.copy(covariance);
  }

  @Override
  public double[][] covariance() {
    return Vectors.copy(covariance);
  }

  /**
   * The time by which a share of events has come.
   *
   * @param share between 0 and 1
   * @param time estimate
   * @param logTimeError standard error of its natural logarithm
   * @param wald limits, symmetric about the logarithm
   */
  public record Quantile(double share, double time, double logTimeError, Interval wald) {}

  /**
   * A quantile of time at given covariates.
   *
   * @param share between 0 and 1; 0.5 for the median
   * @param confidence two-sided, between 0 and 1
   * @param covariates one per column of the design, the intercept's 1 included
   */
  public Quantile quantile(double share, double confidence, double... covariates) {
    if (!(share > 0 && share < 1)) {
      throw new IllegalArgumentException(
          "Share must lie between 0 and 1, not " + share + "; write 0.9 for 90 %.");
    }
    Interval.requireConfidence(confidence);
    double noise = scale * (Math.log(share) - Math.log1p(-share));
    double[] gradient = Arrays.copyOf(covariates, terms.size() + 1);
    gradient[terms.size()] = noise;
    double variance = 0;
    for (int j = 0; j < gradient.length; j++) {
      for (int k = 0; k < gradient.length; k++) {
        variance += gradient[j] * covariance[j][k] * gradient[k];
      }
    }
    double logTime = location(covariates) + noise;
    double error = Math.sqrt(variance);
    double reach = StandardNormal.reachOfMiddle(confidence) * error;
    return new Quantile(
        share,
        Math.exp(logTime),
        error,
        Interval.of(Math.exp(logTime - reach), Math.exp(logTime + reach), confidence));
  }

  /** Share of events by a time, at covariates as for {@link #quantile}. */
  public double shareBy(double time, double... covariates) {
    if (!(time > 0)) {
      throw new IllegalArgumentException("Time must be above 0, not " + time + ".");
    }
    return 1 / (1 + Math.exp(-(Math.log(time) - location(covariates)) / scale));
  }

  private double location(double[] covariates) {
    if (covariates.length != terms.size()) {
      throw new IllegalArgumentException(
          "There must be one covariate per coefficient: %d coefficients, but %d values."
              .formatted(terms.size(), covariates.length));
    }
    double sum = 0;
    for (int j = 0; j < covariates.length; j++) {
      sum += covariates[j] * terms.get(j).estimate();
    }
    return sum;
  }
}
