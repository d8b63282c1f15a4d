package charline.stat.regression;

import charline.stat.distribution.Logistic;
import charline.stat.linear.Term;
import charline.stat.linear.Vectors;
import java.util.List;

/**
 * A binomial regression that has converged.
 *
 * @param sample what was fitted
 * @param method the estimator
 * @param terms one per column of the design, in its order
 * @param covariance of the coefficients, from the expected information at the estimate
 * @param logLikelihood without binomial coefficients and without the penalty
 * @param penalty half the log determinant of the information; 0 for maximum likelihood. It depends
 *     on the units of the covariates, so only differences between fits of one design mean anything
 * @param separation of the outcomes; always {@link Separation#NONE} for maximum likelihood
 */
public record BinomialFit(
    BinomialSample sample,
    BinomialRegression method,
    List<Term> terms,
    double[][] covariance,
    double logLikelihood,
    double penalty,
    Separation separation)
    implements FitOutcome {
  public BinomialFit {
    terms = List.copyOf(terms);
    covariance = Vectors.copy(covariance);
    if (method.estimator() == Estimator.MAXIMUM_LIKELIHOOD && separation != Separation.NONE) {
      throw new IllegalArgumentException(
          "Maximum likelihood has no finite estimate for %s separation; fit with FIRTH_PENALISED."
              .formatted(separation));
    }
  }

  @Override
  public double[][] covariance() {
    return Vectors.copy(covariance);
  }

  /**
   * The coefficient of a column.
   *
   * @throws IllegalArgumentException "No column 'PO'; this design has [(Intercept), NV]."
   */
  public Term term(String name) {
    return terms.get(sample.design().indexOf(name));
  }

  /** Estimates in the order of the design's columns. */
  public double[] coefficients() {
    return terms.stream().mapToDouble(Term::estimate).toArray();
  }

  /** What the fit made largest: log-likelihood and penalty. */
  public double objective() {
    return logLikelihood + penalty;
  }

  /** Log-likelihood with the binomial coefficients. */
  public double fullLogLikelihood() {
    return logLikelihood + sample.logCoefficients();
  }

  /** Akaike's criterion, from the full log-likelihood. */
  public double aic() {
    return 2 * (terms.size() - fullLogLikelihood());
  }

  /** Rows less coefficients. */
  public int residualDegreesOfFreedom() {
    return sample.rowCount() - terms.size();
  }

  /** The fitted risk of a row of the sample, counted from 0. */
  public double risk(int row) {
    return Logistic.cdf(sample.design().predictor(row, coefficients()));
  }

  /** The fitted risk of every row. */
  public double[] risks() {
    double[] risks = new double[sample.rowCount()];
    for (int i = 0; i < risks.length; i++) {
      risks[i] = risk(i);
    }
    return risks;
  }

  /**
   * The risk at covariates of one's own.
   *
   * @param covariates one per column of the design, the intercept's 1 included
   */
  public double riskAt(double... covariates) {
    if (covariates.length != terms.size()) {
      throw new IllegalArgumentException(
          "There must be one covariate per coefficient: %d coefficients %s, but %d values."
              .formatted(terms.size(), sample.design().names(), covariates.length));
    }
    return Logistic.cdf(Vectors.dot(covariates, coefficients()));
  }

  /** Twice the log-likelihood lost against a risk of its own for each row. */
  public double deviance() {
    double[] coefficients = coefficients();
    double sum = 0;
    for (int i = 0; i < sample.rowCount(); i++) {
      double eta = sample.design().predictor(i, coefficients);
      sum += deviance(i, Logistic.logCdf(eta), Logistic.logCdf(-eta));
    }
    return sum;
  }

  /** The deviance of one risk for all rows. */
  public double nullDeviance() {
    double p = sample.totalEvents() / (double) sample.totalTrials();
    double sum = 0;
    for (int i = 0; i < sample.rowCount(); i++) {
      sum += deviance(i, Math.log(p), Math.log1p(-p));
    }
    return sum;
  }

  private double deviance(int row, double logRisk, double logComplement) {
    double events = sample.events(row);
    double others = sample.trials(row) - events;
    double trials = sample.trials(row);
    double sum = 0;
    if (events > 0) {
      sum += events * (Math.log(events / trials) - logRisk);
    }
    if (others > 0) {
      sum += others * (Math.log(others / trials) - logComplement);
    }
    return 2 * sum;
  }

  /** Pearson's statistic, sum of (y - m p)² / (m p (1-p)). */
  public double pearson() {
    double sum = 0;
    for (int i = 0; i < sample.rowCount(); i++) {
      double p = risk(i);
      double trials = sample.trials(i);
      double residual = sample.events(i) - trials * p;
      sum += residual * residual / (trials * p * (1 - p));
    }
    return sum;
  }
}
