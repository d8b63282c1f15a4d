package charline.stat.regression;

import charline.stat.Ascent;
import charline.stat.Smooth;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Binomial regression: how the risk of an event depends on covariates.
 *
 * <p>Separation is looked for first, by linear programming unless some of the rows of a large
 * sample already exclude it; where it is found maximum likelihood returns {@link Separated}, never
 * a large number. Estimates agree with published tables to 1e-9 of themselves; standard errors come
 * from the expected information at the estimate (for {@link Estimator#FIRTH_PENALISED} without the
 * penalty's curvature). Where a sample has brackets, their factor enters the likelihood and, with
 * its observed curvature, the information; the penalty stays that of the rows.
 *
 * @param estimator what to maximise
 * @param link the curve between linear predictor and risk
 */
public record BinomialRegression(Estimator estimator, Link link) {
  /** In units where a covariate's spread is 1: far enough to travel, short of the flat tails. */
  private static final Ascent CLIMB = Ascent.withDefaults().withLongestStep(4).withSteps(500);

  /** Samples above this size are first fitted by a part of their rows, as a start. */
  private static final int LARGE = 20_000;

  private static final int STRIDE = 20;

  public BinomialRegression {
    if (estimator == Estimator.FIRTH_PENALISED && link != Link.LOGIT) {
      throw new IllegalArgumentException(
          "Firth's penalised likelihood is offered for the logit link, not " + link + ".");
    }
  }

  /** Maximum likelihood with the logit link. */
  public static BinomialRegression withDefaults() {
    return new BinomialRegression(Estimator.MAXIMUM_LIKELIHOOD, Link.LOGIT);
  }

  public BinomialRegression with(Estimator other) {
    return new BinomialRegression(other, link);
  }

  public BinomialRegression with(Link other) {
    return new BinomialRegression(estimator, other);
  }

  /**
   * Fits one coefficient per column of the sample's design.
   *
   * @return a {@link BinomialFit}, or {@link Separated} where maximum likelihood has no finite
   *     estimate, or {@link NotConverged}
   * @throws IllegalArgumentException if the sample has brackets and the link is not the logit
   */
  public FitOutcome fit(BinomialSample sample) {
    if (link != Link.LOGIT && !sample.brackets().isEmpty()) {
      throw new IllegalArgumentException(
          "Brackets need the logit link, not " + link + "; give one row per unit.");
    }
    Counts counts = Counts.of(sample);
    Start start = start(counts);
    Separation.Finding finding = start.overlap() ? Separation.NOTHING : Separation.in(sample);
    if (estimator == Estimator.MAXIMUM_LIKELIHOOD && finding.kind() != Separation.NONE) {
      return Separated.of(finding, sample);
    }
    Ascent.Outcome end = CLIMB.climb(objective(sample, counts), start.point());
    return end instanceof Ascent.Summit summit
        ? fitAt(sample, counts, summit, finding.kind())
        : new NotConverged(
            "The fit by %s must reach a maximum, but %s; check the covariates for values far from the rest."
                .formatted(estimator.words(), ((Ascent.Lost) end).reason()));
  }

  /**
   * Where the search begins.
   *
   * @param overlap whether it is known already that no line separates the outcomes
   */
  private record Start(double[] point, boolean overlap) {}

  private Start start(Counts counts) {
    double[] nowhere = new double[counts.q()[0].length];
    if (link == Link.LOGIT && counts.q().length > LARGE) {
      Counts thin = counts.thinned(STRIDE);
      if (CLIMB.climb(new LogitLikelihood(thin), nowhere) instanceof Ascent.Summit near) {
        return new Start(near.point(), Separation.excludedBy(near, thin));
      }
    }
    return new Start(nowhere, false);
  }

  /** What is maximised, on the orthogonal basis of the sample's design. */
  Smooth objective(BinomialSample sample) {
    return objective(sample, Counts.of(sample));
  }

  private Smooth objective(BinomialSample sample, Counts counts) {
    Smooth rows =
        switch (estimator) {
          case MAXIMUM_LIKELIHOOD -> likelihood(counts);
          case FIRTH_PENALISED -> new FirthLikelihood(counts);
        };
    return Bracketed.of(rows, sample);
  }

  private Smooth likelihood(Counts counts) {
    return link == Link.LOGIT ? new LogitLikelihood(counts) : new BinomialLikelihood(counts, link);
  }

  private BinomialFit fitAt(
      BinomialSample sample, Counts counts, Ascent.Summit summit, Separation separation) {
    Design design = sample.design();
    Basis basis = design.basis();
    Smooth.Local likely =
        estimator == Estimator.MAXIMUM_LIKELIHOOD
            ? new Smooth.Local(summit.value(), summit.gradient(), summit.hessian())
            : Bracketed.of(likelihood(counts), sample).local(summit.point());
    double logLikelihood = likely.value();
    RealMatrix information = information(counts, summit.point(), likely);
    RealMatrix covariance =
        basis.outwardCovariance(
            new CholeskyDecomposition(information, 1e-8, 0).getSolver().getInverse());
    double[] coefficients = basis.outward(summit.point());
    List<Term> terms = new ArrayList<>();
    for (int j = 0; j < coefficients.length; j++) {
      terms.add(
          new Term(design.names().get(j), coefficients[j], Math.sqrt(covariance.getEntry(j, j))));
    }
    double penalty =
        estimator == Estimator.FIRTH_PENALISED
            ? summit.value() - logLikelihood + basis.logDeterminant()
            : 0;
    return new BinomialFit(
        sample, this, terms, covariance.getData(), logLikelihood, penalty, separation);
  }

  /** Expected, which under the logit link is the observed one too. */
  private RealMatrix information(Counts counts, double[] point, Smooth.Local likely) {
    return link == Link.LOGIT
        ? new Array2DRowRealMatrix(likely.hessian(), false).scalarMultiply(-1)
        : new Array2DRowRealMatrix(new BinomialLikelihood(counts, link).information(point), false);
  }
}
