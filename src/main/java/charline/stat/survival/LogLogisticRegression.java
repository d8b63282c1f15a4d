package charline.stat.survival;

import charline.stat.linear.Design;
import charline.stat.linear.Term;
import charline.stat.optimisation.NewtonMaximizer;
import charline.stat.optimisation.RecessionDirection;
import charline.stat.survival.LogLogisticOutcome.NoLogLogisticFit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Log-logistic accelerated-failure-time regression by maximum likelihood: {@code ln T = x·b + scale
 * e} with e standard logistic (Bennett 1983, Applied Statistics 32:165-171; Kalbfleisch and
 * Prentice 2002, The Statistical Analysis of Failure Time Data, section 2.2). Times may be exact or
 * left, right or interval censored.
 *
 * <p>In b/scale and 1/scale the log-likelihood is concave (Burridge 1981, JRSS B 43:41-45), so the
 * maximum is the only one, and a linear programme tells beforehand whether there is one. Estimates
 * are accurate to 1e-9 of themselves; errors come from the observed information.
 *
 * @param steps at most this many, at least 1
 */
public record LogLogisticRegression(int steps) {
  public LogLogisticRegression {
    if (steps < 1) {
      throw new IllegalArgumentException("Steps must be 1 or more, not " + steps + ".");
    }
  }

  /** Up to 200 steps. */
  public static LogLogisticRegression withDefaults() {
    return new LogLogisticRegression(200);
  }

  public LogLogisticRegression withSteps(int atMost) {
    return new LogLogisticRegression(atMost);
  }

  /**
   * Fits one coefficient per column and the scale.
   *
   * @param design one row per time
   * @param times as many
   * @return a {@link LogLogisticFit}, or {@link NoLogLogisticFit} where no finite estimate exists
   * @throws IllegalArgumentException if there is not one row per time
   */
  public LogLogisticOutcome fit(Design design, CensoredTimes times) {
    if (design.rowCount() != times.count()) {
      throw new IllegalArgumentException(
          "There must be one time per row: %d rows, but %d times."
              .formatted(design.rowCount(), times.count()));
    }
    LogLogisticLikelihood likelihood = new LogLogisticLikelihood(design, times);
    Optional<double[]> direction =
        RecessionDirection.direction(likelihood.neverFalling(), likelihood.level());
    if (direction.isPresent()) {
      return NoLogLogisticFit.running(direction.get(), times);
    }
    NewtonMaximizer.Outcome end =
        NewtonMaximizer.withDefaults().withSteps(steps).maximize(likelihood, likelihood.start());
    return end instanceof NewtonMaximizer.Maximum maximum
        ? fitAt(design, times, likelihood, maximum)
        : new NoLogLogisticFit(
            "The fit of times must reach a maximum, but %s; check the covariates for values far from the rest."
                .formatted(((NewtonMaximizer.NoMaximum) end).reason()));
  }

  private static LogLogisticFit fitAt(
      Design design,
      CensoredTimes times,
      LogLogisticLikelihood likelihood,
      NewtonMaximizer.Maximum maximum) {
    int width = design.columnCount();
    RealMatrix jacobian = new Array2DRowRealMatrix(likelihood.jacobian(maximum.point()), false);
    RealMatrix information =
        jacobian
            .transpose()
            .multiply(new Array2DRowRealMatrix(maximum.hessian(), false).scalarMultiply(-1))
            .multiply(jacobian);
    RealMatrix covariance = MatrixUtils.inverse(information);
    double[] coefficients = likelihood.coefficients(maximum.point());
    List<Term> terms = new ArrayList<>();
    for (int j = 0; j < width; j++) {
      terms.add(
          new Term(design.names().get(j), coefficients[j], Math.sqrt(covariance.getEntry(j, j))));
    }
    return new LogLogisticFit(
        terms,
        1 / maximum.point()[width],
        Math.sqrt(covariance.getEntry(width, width)),
        covariance.getData(),
        maximum.value() + likelihood.logUnits(times));
  }
}
