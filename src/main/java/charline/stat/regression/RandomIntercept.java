package charline.stat.regression;

import charline.stat.Ascent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Logistic regression with a normal random intercept per group, by maximum likelihood; the integral
 * over each intercept by the Laplace approximation (Breslow and Clayton 1993, JASA 88:9-25; as one
 * point of adaptive quadrature, Pinheiro and Bates 1995, JCGS 4:12-35).
 *
 * <p>The standard deviation may come out as 0; the coefficients are then those of the plain fit.
 * Coefficients are accurate to 1e-6 of themselves as a maximum of the approximation; the
 * approximation itself is good to a few per cent for groups of a handful of trials.
 *
 * @param largestStandardDeviation where the search ends; groups that differ more are nearly all
 *     event or all none
 */
public record RandomIntercept(double largestStandardDeviation) {
  private static final double[] STARTS = {0.3, 1, 3};
  private static final Ascent CLIMB = Ascent.withDefaults().withLongestStep(1).withSteps(100);

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

  public RandomIntercept withLargestStandardDeviation(double deviation) {
    return new RandomIntercept(deviation);
  }

  /**
   * Fits coefficients and the standard deviation between groups.
   *
   * @param sample events out of trials
   * @param groups one label per row of the sample; at least two different ones
   * @return a {@link RandomInterceptFit}, or {@link Separated} where the covariates alone separate
   *     the outcomes, or {@link NotConverged}
   * @throws IllegalArgumentException if the labels do not fit the sample
   */
  public RandomInterceptOutcome fit(BinomialSample sample, List<String> groups) {
    Map<String, Integer> index = index(sample, groups);
    FitOutcome plain = BinomialRegression.withDefaults().fit(sample);
    if (!(plain instanceof BinomialFit plainFit)) {
      return plain instanceof Separated separated ? separated : (NotConverged) plain;
    }
    int[] group = groups.stream().mapToInt(index::get).toArray();
    LaplaceLikelihood laplace =
        new LaplaceLikelihood(sample, group, index.size(), largestStandardDeviation);
    double[] base = sample.design().basis().inward(plainFit.coefficients());
    Ascent.Summit best = null;
    double lost = Double.NEGATIVE_INFINITY;
    for (double start : STARTS) {
      double[] point = Arrays.copyOf(base, base.length + 1);
      point[base.length] = Math.min(start, largestStandardDeviation / 2);
      Ascent.Outcome end = CLIMB.climb(laplace, point);
      if (end instanceof Ascent.Lost abandoned) {
        lost = Math.max(lost, laplace.value(abandoned.point()));
      } else if (end instanceof Ascent.Summit found
          && (best == null || found.value() > best.value())) {
        best = found;
      }
    }
    double reached =
        best == null ? plainFit.logLikelihood() : Math.max(best.value(), plainFit.logLikelihood());
    if (lost > reached + NOTHING) {
      return new NotConverged(
          "The deviation between groups must have a likeliest value up to %s, but the likelihood still grows there: groups are small, or nearly all event or all none; fit without groups."
              .formatted(largestStandardDeviation));
    }
    boolean nothing =
        best == null
            || Math.abs(best.point()[base.length]) < NOTHING
            || best.value() <= plainFit.logLikelihood() + NOTHING * NOTHING;
    return nothing ? singular(plainFit, index) : fitAt(sample, laplace, best, index);
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

  private static RandomInterceptFit singular(BinomialFit plain, Map<String, Integer> index) {
    return new RandomInterceptFit(
        plain.terms(),
        plain.terms().stream().map(Term::standardError).toList(),
        0,
        0,
        plain.fullLogLikelihood(),
        index.keySet().stream().map(g -> new RandomInterceptFit.Group(g, 0, 0)).toList());
  }

  private static RandomInterceptFit fitAt(
      BinomialSample sample,
      LaplaceLikelihood laplace,
      Ascent.Summit best,
      Map<String, Integer> index) {
    Basis basis = sample.design().basis();
    int width = sample.design().columnCount();
    double[] coefficients = basis.outward(Arrays.copyOf(best.point(), width));
    double deviation = Math.abs(best.point()[width]);
    RealMatrix hessian = new Array2DRowRealMatrix(best.hessian(), false).scalarMultiply(-1);
    RealMatrix full = new CholeskyDecomposition(hessian, 1e-6, 0).getSolver().getInverse();
    RealMatrix covariance = basis.outwardCovariance(full.getSubMatrix(0, width - 1, 0, width - 1));
    RealMatrix conditional =
        basis.outwardCovariance(
            new CholeskyDecomposition(
                    new Array2DRowRealMatrix(laplace.conditionalInformation(best.point()), false),
                    1e-8,
                    0)
                .getSolver()
                .getInverse());
    List<Term> terms = new ArrayList<>();
    List<Double> conditionalErrors = new ArrayList<>();
    for (int j = 0; j < width; j++) {
      terms.add(
          new Term(
              sample.design().names().get(j),
              coefficients[j],
              Math.sqrt(covariance.getEntry(j, j))));
      conditionalErrors.add(Math.sqrt(conditional.getEntry(j, j)));
    }
    return new RandomInterceptFit(
        terms,
        conditionalErrors,
        deviation,
        Math.sqrt(full.getEntry(width, width)) / deviation,
        best.value() + sample.logCoefficients(),
        laplace.groups(best.point(), List.copyOf(index.keySet())));
  }
}
