package charline.stat;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * Maximises a smooth function by Newton steps damped as Levenberg and Marquardt do: the Hessian is
 * shifted until it is negative definite and the step goes uphill.
 *
 * @param gradientTolerance largest gradient component, in absolute value, at a maximum
 * @param maxSteps steps before giving up
 */
public record DampedNewton(double gradientTolerance, int maxSteps) {
  private static final double LONGEST_STEP = 3;

  public static DampedNewton withDefaults() {
    return new DampedNewton(1e-8, 200);
  }

  /** Where the search ended. */
  public sealed interface Outcome permits Maximum, NotConverged {}

  /**
   * A maximum.
   *
   * @param point argument
   * @param value function value
   * @param hessian second derivatives there, negative definite
   */
  public record Maximum(double[] point, double value, double[][] hessian) implements Outcome {
    /** The inverse of the negative Hessian: the covariance of the normal approximation. */
    public RealMatrix covariance() {
      EigenDecomposition eigen = new EigenDecomposition(new Array2DRowRealMatrix(hessian));
      return eigen.getSolver().getInverse().scalarMultiply(-1);
    }
  }

  /**
   * No maximum found.
   *
   * @param lastPoint where the search stood
   * @param steps steps taken
   */
  public record NotConverged(double[] lastPoint, int steps) implements Outcome {}

  /**
   * Climbs from a start.
   *
   * @param f function to maximise, finite at the start
   * @param start n variables; left as it is
   */
  public Outcome maximise(SmoothFunction f, double[] start) {
    double[] x = start.clone();
    SmoothFunction.Expansion here = f.expand(x);
    double damping = 0;
    for (int step = 0; step < maxSteps; step++) {
      EigenDecomposition curvature =
          new EigenDecomposition(new Array2DRowRealMatrix(here.hessian()));
      double flattest = max(curvature.getRealEigenvalues());
      if (largest(here.gradient()) <= gradientTolerance && flattest < 0) {
        return new Maximum(x, here.value(), here.hessian());
      }
      double shift = Math.max(damping, flattest >= 0 ? flattest + 0.1 : 0);
      double[] candidate = step(x, here.gradient(), curvature, shift);
      double value = f.value(candidate);
      if (value > here.value() - 1e-12 * Math.abs(here.value())) {
        x = candidate;
        here = f.expand(x);
        damping = damping < 1e-3 ? 0 : damping / 10;
      } else {
        damping = damping == 0 ? 1e-2 : damping * 10;
        if (damping > 1e12) {
          return new NotConverged(x, step + 1);
        }
      }
    }
    return new NotConverged(x, maxSteps);
  }

  /** x + (shift I - H)^-1 g, shortened to the longest step allowed. */
  private static double[] step(
      double[] x, double[] gradient, EigenDecomposition curvature, double shift) {
    RealMatrix axes = curvature.getV();
    RealVector along = axes.preMultiply(new ArrayRealVector(gradient));
    for (int k = 0; k < x.length; k++) {
      along.setEntry(k, along.getEntry(k) / (shift - curvature.getRealEigenvalue(k)));
    }
    RealVector move = axes.operate(along);
    double length = move.getNorm();
    if (length > LONGEST_STEP) {
      move = move.mapMultiply(LONGEST_STEP / length);
    }
    return new ArrayRealVector(x).add(move).toArray();
  }

  private static double largest(double[] values) {
    double largest = 0;
    for (double v : values) {
      largest = Math.max(largest, Math.abs(v));
    }
    return largest;
  }

  private static double max(double[] values) {
    double max = Double.NEGATIVE_INFINITY;
    for (double v : values) {
      max = Math.max(max, v);
    }
    return max;
  }
}
