package charline.stat.mixed;

import charline.stat.linear.OrthogonalBasis;
import charline.stat.linear.Term;
import charline.stat.mixed.RandomInterceptOutcome.NoRandomInterceptFit;
import charline.stat.optimisation.NewtonMaximizer;
import charline.stat.optimisation.TwiceDifferentiableFunction;
import charline.stat.regression.BinomialFit;
import charline.stat.regression.BinomialRegression;
import charline.stat.regression.BinomialSample;
import charline.stat.regression.FitOutcome;
import charline.stat.regression.FitOutcome.NotConverged;
import charline.stat.regression.IntervalCensored;
import charline.stat.regression.Separated;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Logistic regression with a normal random intercept per group, by maximum likelihood; the integral
 * over each intercept on an evenly spaced grid.
 *
 * <p>The standard deviation may come out as 0; the coefficients are then those of the plain fit.
 * Coefficients are accurate to 1e-6 of themselves.
 *
 * <p>Rows that are two looks at one unit keep their {@link BinomialSample#withBrackets bracket}: a
 * random intercept moves both predictors alike, so the factor that joins them does not depend on it
 * and stays outside the integral. Taken as independent rows they would make every slope too flat.
 *
 * @param largestStandardDeviation where the search ends; groups that differ more are nearly all
 *     event or all none
 */
public record RandomIntercept(double largestStandardDeviation) {
  private static final double[] STARTS = {0.3, 1, 3};
  private static final NewtonMaximizer MAXIMIZER =
      NewtonMaximizer.withDefaults().withLongestStep(1).withSteps(100);

  /** A deviation below this, or a gain in log-likelihood below it, is none. */
  private static final double NOTHING = 1e-6;

  public RandomIntercept {
    if (!(largestStandardDeviation > 0)) {
      throw new IllegalArgumentException(
          "The largest standard deviation must be above 0, not " + largestStandardDeviation + ".");
    }
  }

  /** Standard deviations up to 30 on the logit scale. */
  public static RandomIntercept withDefaults() {
    return new RandomIntercept(30);
  }

  /**
   * Fits coefficients and the standard deviation between groups.
   *
   * @param sample events out of trials
   * @param groups one label per row of the sample; at least two different ones
   * @return a {@link RandomInterceptFit}, or {@link NoRandomInterceptFit} where the covariates
   *     alone separate the outcomes or no maximum is reached
   * @throws IllegalArgumentException if the labels do not fit the sample
   */
  public RandomInterceptOutcome fit(BinomialSample sample, List<String> groups) {
    Map<String, Integer> index = index(sample, groups);
    FitOutcome plain = BinomialRegression.withDefaults().fit(sample);
    if (!(plain instanceof BinomialFit plainFit)) {
      return plain instanceof Separated separated
          ? new NoRandomInterceptFit(NoRandomInterceptFit.Cause.SEPARATED, separated.message())
          : new NoRandomInterceptFit(
              NoRandomInterceptFit.Cause.NOT_CONVERGED, ((NotConverged) plain).message());
    }
    int[] group = groups.stream().mapToInt(index::get).toArray();
    TwiceDifferentiableFunction objective =
        IntervalCensored.of(
            new IntegratedLikelihood(sample, group, index.size(), largestStandardDeviation),
            sample,
            1);
    double[] base = sample.design().basis().inward(plainFit.coefficients());
    NewtonMaximizer.Maximum best = null;
    double lost = Double.NEGATIVE_INFINITY;
    for (double start : STARTS) {
      double[] point = Arrays.copyOf(base, base.length + 1);
      point[base.length] = Math.min(start, largestStandardDeviation / 2);
      NewtonMaximizer.Outcome end = MAXIMIZER.maximize(objective, point);
      if (end instanceof NewtonMaximizer.NoMaximum abandoned) {
        lost = Math.max(lost, objective.value(abandoned.point()));
      } else if (end instanceof NewtonMaximizer.Maximum found
          && (best == null || found.value() > best.value())) {
        best = found;
      }
    }
    double reached =
        best == null ? plainFit.logLikelihood() : Math.max(best.value(), plainFit.logLikelihood());
    if (lost > reached + NOTHING) {
      return new NoRandomInterceptFit(
          NoRandomInterceptFit.Cause.DEVIATION_UNBOUNDED,
          "The deviation between groups must have a likeliest value up to %s, but the likelihood still grows there: groups are small, or nearly all event or all none; fit without groups."
              .formatted(largestStandardDeviation));
    }
    boolean nothing =
        best == null
            || Math.abs(best.point()[base.length]) < NOTHING
            || best.value() <= plainFit.logLikelihood() + NOTHING * NOTHING;
    return nothing ? singular(plainFit, index.size()) : fitAt(sample, best, index.size());
  }

  private static Map<String, Integer> index(BinomialSample sample, List<String> groups) {
    if (groups.size() != sample.rowCount()) {
      throw new IllegalArgumentException(
          "There must be one group label per row: %d rows, but %d labels."
              .formatted(sample.rowCount(), groups.size()));
    }
    Map<String, Integer> index = new LinkedHashMap<>();
    for (String label : groups) {
      index.putIfAbsent(label, index.size());
    }
    if (index.size() < 2) {
      throw new IllegalArgumentException(
          "A random intercept needs at least 2 groups, not only '%s'; fit without groups."
              .formatted(groups.get(0)));
    }
    return index;
  }

  private static RandomInterceptFit singular(BinomialFit plain, int groups) {
    int width = plain.terms().size();
    double[][] covariance = new double[width + 1][width + 1];
    for (int j = 0; j < width; j++) {
      System.arraycopy(plain.covariance()[j], 0, covariance[j], 0, width);
    }
    return new RandomInterceptFit(
        plain.terms(), 0, 0, covariance, plain.fullLogLikelihood(), groups);
  }

  private static RandomInterceptFit fitAt(
      BinomialSample sample, NewtonMaximizer.Maximum best, int groups) {
    int width = sample.design().columnCount();
    double[] coefficients = sample.design().basis().outward(Arrays.copyOf(best.point(), width));
    double sign = Math.signum(best.point()[width]);
    double deviation = sign * best.point()[width];
    double[][] covariance = outward(sample.design().basis(), best.covariance(), sign);
    List<Term> terms = new ArrayList<>();
    for (int j = 0; j < width; j++) {
      terms.add(
          new Term(sample.design().names().get(j), coefficients[j], Math.sqrt(covariance[j][j])));
    }
    return new RandomInterceptFit(
        terms,
        deviation,
        Math.sqrt(covariance[width][width]) / deviation,
        covariance,
        best.value() + sample.logCoefficients(),
        groups);
  }

  /** The covariance in the design's own columns and the size of s, whichever sign it came with. */
  private static double[][] outward(OrthogonalBasis basis, double[][] inward, double sign) {
    int width = inward.length - 1;
    double[][] coefficients = new double[width][];
    double[] withDeviation = new double[width];
    for (int j = 0; j < width; j++) {
      coefficients[j] = Arrays.copyOf(inward[j], width);
      withDeviation[j] = sign * inward[j][width];
    }
    double[][] among = basis.outwardCovariance(coefficients);
    double[] beside = basis.outward(withDeviation);
    double[][] covariance = new double[width + 1][];
    for (int j = 0; j < width; j++) {
      covariance[j] = Arrays.copyOf(among[j], width + 1);
      covariance[j][width] = beside[j];
    }
    covariance[width] = Arrays.copyOf(beside, width + 1);
    covariance[width][width] = inward[width][width];
    return covariance;
  }
}
