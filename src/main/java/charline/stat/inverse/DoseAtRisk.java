package charline.stat.inverse;

import charline.stat.distribution.Logistic;
import charline.stat.distribution.StandardNormal;
import charline.stat.interval.Bound;
import charline.stat.interval.FiellerSet;
import charline.stat.interval.Interval;
import charline.stat.inverse.DoseOutcome.NoDose;
import charline.stat.linear.Design;
import charline.stat.linear.Term;
import charline.stat.linear.Vectors;
import charline.stat.regression.BinomialFit;
import java.util.LinkedHashMap;
import java.util.Map;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;

/**
 * Inverse estimation: the dose at a given risk.
 *
 * <p>A trial dose is accepted while the objective, made as large as possible over all coefficients
 * that give it exactly that risk, stays within the chi-square quantile of its maximum; the limit is
 * the end of the connected stretch of accepted doses that holds the estimate (Williams 1986,
 * Biometrics 42:641-645; for the penalised likelihood, the same with Firth's objective). As the
 * dose goes to infinity the drop tends to that of a slope of 0, so a limit may be {@link
 * Bound.Unbounded}: the data then agree with no effect at all. Limits are accurate to 1e-7 of
 * themselves; a limit further than 1e9 first steps away counts as unbounded.
 *
 * @param column the covariate to solve for
 * @param risk between 0 and 1
 * @param others the value of every other covariate but the intercept, by name
 * @param confidence two-sided; 0.90 gives a one-sided 95 % limit at each end
 */
public record DoseAtRisk(
    String column, double risk, Map<String, Double> others, double confidence) {
  /** A slope this small beside its standard error is rounding. */
  private static final double NO_SLOPE = 1e-8;

  public DoseAtRisk {
    others = Map.copyOf(others);
    Interval.requireConfidence(confidence);
    if (!(risk > 0 && risk < 1)) {
      throw new IllegalArgumentException(
          "Risk must lie between 0 and 1, not " + risk + "; write 0.05 for 5 %.");
    }
  }

  /** At 90 % two-sided confidence, with no other covariates. */
  public static DoseAtRisk of(String column, double risk) {
    return new DoseAtRisk(column, risk, Map.of(), 0.90);
  }

  /** States the value of another covariate. */
  public DoseAtRisk given(String other, double value) {
    Map<String, Double> all = new LinkedHashMap<>(others);
    all.put(other, value);
    return new DoseAtRisk(column, risk, all, confidence);
  }

  public DoseAtRisk withConfidence(double level) {
    return new DoseAtRisk(column, risk, others, level);
  }

  /**
   * The dose with its limits.
   *
   * @throws IllegalArgumentException if a covariate of the fit is missing from {@link #others}, or
   *     one is named that the fit does not have
   */
  public DoseOutcome estimate(BinomialFit fit) {
    Design design = fit.sample().design();
    int along = design.indexOf(column);
    double[] rest = rest(design, along);
    Term slope = fit.terms().get(along);
    if (Math.abs(slope.z()) < NO_SLOPE) {
      return new NoDose(
          "The risk must change with '%s' for a dose to exist, but the fitted slope is 0; try doses further apart."
              .formatted(column));
    }
    double target = Logistic.quantile(risk);
    double level = Vectors.dot(rest, fit.coefficients()) - target;
    double estimate = -level / slope.estimate();
    Array2DRowRealMatrix covariance = new Array2DRowRealMatrix(fit.covariance(), false);
    double[] gradient = at(rest, along, estimate);
    double variance = Vectors.dot(gradient, covariance.operate(gradient));
    double error = Math.sqrt(variance) / Math.abs(slope.estimate());
    double[] restCovariance = covariance.operate(rest);
    double z = StandardNormal.reachOfMiddle(confidence);
    return new Dose(
        column,
        risk,
        estimate,
        slope.estimate(),
        error,
        profile(fit, rest, along, estimate, error, target),
        Interval.of(estimate - z * error, estimate + z * error, confidence),
        FiellerSet.of(
            level,
            slope.estimate(),
            Vectors.dot(rest, restCovariance),
            restCovariance[along],
            covariance.getEntry(along, along),
            z),
        new ProfileLikelihood(fit).surestDrop(axis(rest.length, along), 0));
  }

  private Interval profile(
      BinomialFit fit, double[] rest, int along, double estimate, double error, double target) {
    double firstStep = Math.min(0.3 * error, 2 * spread(fit.sample().design(), along));
    Bound[] ends = new Bound[2];
    for (int side = 0; side < 2; side++) {
      ProfileLikelihood profile = new ProfileLikelihood(fit);
      ProfileCrossing walk =
          new ProfileCrossing(
              dose -> profile.drop(at(rest, along, dose), target),
              dose -> profile.surestDrop(at(rest, along, dose), target),
              ProfileLimits.acceptedDrop(confidence));
      ends[side] = walk.from(estimate, firstStep, side == 0 ? -1 : 1);
    }
    return new Interval(ends[0], ends[1], confidence);
  }

  private double[] rest(Design design, int along) {
    others.keySet().forEach(design::indexOf);
    double[] rest = new double[design.columnCount()];
    for (int j = 0; j < rest.length; j++) {
      String name = design.names().get(j);
      if (j == along) {
        continue;
      }
      if (!name.equals(Design.INTERCEPT) && !others.containsKey(name)) {
        throw new IllegalArgumentException(
            "Every other covariate needs a value, but '%s' has none; state it with given(...)."
                .formatted(name));
      }
      rest[j] = name.equals(Design.INTERCEPT) ? 1 : others.get(name);
    }
    return rest;
  }

  private static double[] at(double[] rest, int along, double dose) {
    double[] row = rest.clone();
    row[along] = dose;
    return row;
  }

  private static double[] axis(int width, int along) {
    double[] axis = new double[width];
    axis[along] = 1;
    return axis;
  }

  private static double spread(Design design, int column) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < design.rowCount(); i++) {
      double value = design.row(i)[column];
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
    return high - low;
  }
}
