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
 * <p>Separation is looked for first, by linear programming; where it is found maximum likelihood
 * returns {@link Separated}, never a large number. Estimates agree with published tables to 1e-9 of
 * themselves; standard errors come from the expected information at the estimate (for {@link
 * Estimator#FIRTH_PENALISED} without the penalty's curvature). Where a sample has brackets, their
 * factor enters the likelihood and, with its observed curvature, the information; the penalty stays
 * that of the rows.
 *
 * @param estimator what to maximise
 * @param link the curve between linear predictor and risk
 */
public record BinomialRegression(Estimator estimator, Link link) {
  /** In units where a covariate's spread is 1: far enough to travel, short of the flat tails. */
  private static final Ascent CLIMB = Ascent.withDefaults().withLongestStep(4).withSteps(500);

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
    Separation.Finding finding = Separation.in(sample);
    if (estimator == Estimator.MAXIMUM_LIKELIHOOD && finding.kind() != Separation.NONE) {
      return Separated.of(finding, sample);
    }
    Smooth objective = objective(sample);
    Ascent.Outcome end = CLIMB.climb(objective, new double[objective.dimension()]);
    return end instanceof Ascent.Summit summit
        ? fitAt(sample, summit, finding.kind())
        : new NotConverged(
            "The fit by %s must reach a maximum, but %s; check the covariates for values far from the rest."
                .formatted(estimator.words(), ((Ascent.Lost) end).reason()));
  }

  /** What is maximised, on the orthogonal basis of the sample's design. */
  Smooth objective(BinomialSample sample) {
    Smooth rows =
        switch (estimator) {
          case MAXIMUM_LIKELIHOOD -> new BinomialLikelihood(sample, link);
          case FIRTH_PENALISED -> new FirthLikelihood(sample);
        };
    return Bracketed.of(rows, sample);
  }

  private BinomialFit fitAt(BinomialSample sample, Ascent.Summit summit, Separation separation) {
    Design design = sample.design();
    Basis basis = design.basis();
    BinomialLikelihood likelihood = new BinomialLikelihood(sample, link);
    double[][] expected = likelihood.information(summit.point());
    Bracketed.addInformation(sample, summit.point(), expected);
    RealMatrix information = new Array2DRowRealMatrix(expected, false);
    double logLikelihood = Bracketed.of(likelihood, sample).value(summit.point());
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
}
