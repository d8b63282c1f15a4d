package charline.stat.regression;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.exception.ConvergenceException;
import org.apache.commons.math3.exception.TooManyEvaluationsException;
import org.apache.commons.math3.exception.TooManyIterationsException;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer.Optimum;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularMatrixException;
import org.apache.commons.math3.util.Pair;

/**
 * Curves by least squares, with the Levenberg-Marquardt method (Marquardt 1963, SIAM J. Appl. Math.
 * 11:431-441) of Commons Math. Certified data agree to 1e-7 of each value.
 *
 * @param evaluations at most this many, at least 1
 */
public record NonlinearLeastSquares(int evaluations) {
  public NonlinearLeastSquares {
    if (evaluations < 1) {
      throw new IllegalArgumentException("Evaluations must be 1 or more, not " + evaluations + ".");
    }
  }

  /** Up to 2000 evaluations. */
  public static NonlinearLeastSquares withDefaults() {
    return new NonlinearLeastSquares(2000);
  }

  public NonlinearLeastSquares withEvaluations(int atMost) {
    return new NonlinearLeastSquares(atMost);
  }

  /**
   * Fits a curve.
   *
   * @param curve what to fit
   * @param x more values than the curve has parameters
   * @param y as many
   * @param start a rough value for each parameter
   * @throws IllegalArgumentException if the lengths do not fit or a number is not finite
   */
  public CurveOutcome fit(Curve curve, double[] x, double[] y, double... start) {
    requireData(curve, x, y, start);
    try {
      Optimum optimum =
          new LevenbergMarquardtOptimizer()
              .withCostRelativeTolerance(1e-14)
              .withParameterRelativeTolerance(1e-14)
              .withOrthoTolerance(1e-14)
              .optimize(
                  new LeastSquaresBuilder()
                      .start(start)
                      .target(y)
                      .model(point -> valuesAndSlopes(curve, x, point))
                      .maxEvaluations(evaluations)
                      .maxIterations(evaluations)
                      .build());
      return fitted(optimum, x.length - curve.parameters());
    } catch (TooManyEvaluationsException
        | TooManyIterationsException
        | ConvergenceException
        | SingularMatrixException failure) {
      return new CurveOutcome.Unfitted(
          "The curve must settle on the points, but the search did not end; start it nearer or measure further along the curve.");
    }
  }

  private static CurveOutcome fitted(Optimum optimum, int degreesOfFreedom) {
    RealVector residuals = optimum.getResiduals();
    double rss = residuals.dotProduct(residuals);
    double scale = Math.sqrt(rss / degreesOfFreedom);
    RealVector errors = optimum.getSigma(1e-14).mapMultiply(scale);
    List<Double> estimates = new ArrayList<>();
    List<Double> standardErrors = new ArrayList<>();
    for (int j = 0; j < errors.getDimension(); j++) {
      if (!Double.isFinite(errors.getEntry(j))) {
        return new CurveOutcome.Unfitted(
            "The points must pin down every parameter, but leave parameter %d free; measure further along the curve."
                .formatted(j + 1));
      }
      estimates.add(optimum.getPoint().getEntry(j));
      standardErrors.add(errors.getEntry(j));
    }
    return new CurveOutcome.Fitted(estimates, standardErrors, rss, degreesOfFreedom);
  }

  private static Pair<RealVector, RealMatrix> valuesAndSlopes(
      Curve curve, double[] x, RealVector point) {
    double[] parameters = point.toArray();
    double[] heights = new double[x.length];
    double[][] slopes = new double[x.length][];
    for (int i = 0; i < x.length; i++) {
      heights[i] = curve.height(x[i], parameters);
      slopes[i] = curve.slopes(x[i], parameters);
    }
    return new Pair<>(new ArrayRealVector(heights, false), new Array2DRowRealMatrix(slopes, false));
  }

  private static void requireData(Curve curve, double[] x, double[] y, double[] start) {
    if (x.length != y.length) {
      throw new IllegalArgumentException(
          "x and y must have one length, not %d and %d.".formatted(x.length, y.length));
    }
    if (start.length != curve.parameters()) {
      throw new IllegalArgumentException(
          "The start must have %d values, one per parameter, not %d."
              .formatted(curve.parameters(), start.length));
    }
    if (x.length <= curve.parameters()) {
      throw new IllegalArgumentException(
          "A curve of %d parameters needs more than %d points, not %d; measure more."
              .formatted(curve.parameters(), curve.parameters(), x.length));
    }
    for (int i = 0; i < x.length; i++) {
      if (!Double.isFinite(x[i]) || !Double.isFinite(y[i])) {
        throw new IllegalArgumentException(
            "Points must be finite numbers, not (%s, %s) in row %d; leave the row out."
                .formatted(x[i], y[i], i + 1));
      }
    }
  }
}
