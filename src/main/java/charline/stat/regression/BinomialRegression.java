package charline.stat.regression;

import charline.stat.linear.Design;
import charline.stat.linear.OrthogonalBasis;
import charline.stat.linear.Term;
import charline.stat.optimisation.NewtonMaximizer;
import charline.stat.optimisation.TwiceDifferentiableFunction;
import charline.stat.regression.FitOutcome.NotConverged;
import java.util.ArrayList;
import java.util.List;

/**
 * Logistic regression: how the risk of an event depends on covariates.
 *
 * <p>Separation is looked for first, by linear programming unless some of the rows of a large
 * sample already exclude it; where it is found maximum likelihood returns {@link Separated}, never
 * a large number. Estimates agree with published tables to 1e-9 of themselves; standard errors come
 * from the expected information at the estimate (for {@link Estimator#FIRTH_PENALISED} without the
 * penalty's curvature). Where a sample has brackets, their factor enters the likelihood and, with
 * its observed curvature, the information; the penalty stays that of the rows.
 *
 * @param estimator what to maximise
 */
public record BinomialRegression(Estimator estimator) {
  /** In units where a covariate's spread is 1: far enough to travel, short of the flat tails. */
  private static final NewtonMaximizer MAXIMIZER =
      NewtonMaximizer.withDefaults().withLongestStep(4).withSteps(500);

  /** Samples above this size are first fitted by a part of their rows, as a start. */
  private static final int LARGE = 20_000;

  private static final int STRIDE = 20;

  /** Maximum likelihood. */
  public static BinomialRegression withDefaults() {
    return new BinomialRegression(Estimator.MAXIMUM_LIKELIHOOD);
  }

  public BinomialRegression with(Estimator other) {
    return new BinomialRegression(other);
  }

  /**
   * Fits one coefficient per column of the sample's design.
   *
   * @return a {@link BinomialFit}, or {@link Separated} where maximum likelihood has no finite
   *     estimate, or {@link NotConverged}
   */
  public FitOutcome fit(BinomialSample sample) {
    GroupedRows counts = GroupedRows.of(sample);
    Start start = start(counts);
    Separation.Finding finding = start.overlap() ? Separation.NOTHING : Separation.in(sample);
    if (estimator == Estimator.MAXIMUM_LIKELIHOOD && finding.kind() != Separation.NONE) {
      return Separated.of(finding, sample);
    }
    NewtonMaximizer.Outcome end = MAXIMIZER.maximize(objective(sample, counts), start.point());
    return end instanceof NewtonMaximizer.Maximum maximum
        ? fitAt(sample, counts, maximum, finding.kind())
        : new NotConverged(
            "The fit by %s must reach a maximum, but %s; check the covariates for values far from the rest."
                .formatted(estimator.words(), ((NewtonMaximizer.NoMaximum) end).reason()));
  }

  /**
   * Where the search begins.
   *
   * @param overlap whether it is known already that no line separates the outcomes
   */
  private record Start(double[] point, boolean overlap) {}

  private Start start(GroupedRows counts) {
    double[] nowhere = new double[counts.q()[0].length];
    if (counts.q().length > LARGE) {
      GroupedRows thin = counts.thinned(STRIDE);
      if (MAXIMIZER.maximize(new LogitLikelihood(thin), nowhere)
          instanceof NewtonMaximizer.Maximum near) {
        return new Start(near.point(), Separation.excludedBy(near, thin));
      }
    }
    return new Start(nowhere, false);
  }

  /** What is maximised, on the orthogonal basis of the sample's design. */
  public TwiceDifferentiableFunction objective(BinomialSample sample) {
    return objective(sample, GroupedRows.of(sample));
  }

  private TwiceDifferentiableFunction objective(BinomialSample sample, GroupedRows counts) {
    TwiceDifferentiableFunction rows =
        switch (estimator) {
          case MAXIMUM_LIKELIHOOD -> new LogitLikelihood(counts);
          case FIRTH_PENALISED -> new FirthLikelihood(counts);
        };
    return IntervalCensored.of(rows, sample);
  }

  private BinomialFit fitAt(
      BinomialSample sample,
      GroupedRows counts,
      NewtonMaximizer.Maximum maximum,
      Separation separation) {
    Design design = sample.design();
    OrthogonalBasis basis = design.basis();
    TwiceDifferentiableFunction.Local likely =
        estimator == Estimator.MAXIMUM_LIKELIHOOD
            ? new TwiceDifferentiableFunction.Local(
                maximum.value(), maximum.gradient(), maximum.hessian())
            : IntervalCensored.of(new LogitLikelihood(counts), sample).local(maximum.point());
    double logLikelihood = likely.value();
    double[][] covariance = basis.covariance(likely.negatedHessian());
    double[] coefficients = basis.outward(maximum.point());
    List<Term> terms = new ArrayList<>();
    for (int j = 0; j < coefficients.length; j++) {
      terms.add(new Term(design.names().get(j), coefficients[j], Math.sqrt(covariance[j][j])));
    }
    double penalty =
        estimator == Estimator.FIRTH_PENALISED
            ? maximum.value() - logLikelihood + basis.logDeterminant()
            : 0;
    return new BinomialFit(sample, this, terms, covariance, logLikelihood, penalty, separation);
  }
}
