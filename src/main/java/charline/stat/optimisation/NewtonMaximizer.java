package charline.stat.optimisation;

import charline.stat.linear.Vectors;
import java.util.Optional;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Newton's method uphill. Each step solves the local quadratic and is halved until the value does
 * not fall. Where the function is not concave the eigenvalues of the Hessian are taken by size, so
 * that a step still leads up (Nocedal and Wright 2006, Numerical Optimization, section 3.4).
 *
 * <p>It ends on a local maximum. For a concave function that is the maximum; for others start from
 * several points.
 *
 * @param longestStep no argument moves further than this in one step, above 0
 * @param steps at most this many, at least 1
 */
public record NewtonMaximizer(double longestStep, int steps) {
  /** A step this short beside its point is rounding. */
  private static final double RESOLUTION = 1e-12;

  /** A promise this small moves no argument by more than 1e-12 of its standard error. */
  private static final double NOTHING = 1e-24;

  /**
   * A value may fall by this part of it: what rounding makes of a sum of n terms is at most n
   * 1.1e-16 of it, for 9,000 terms 1e-12, and grows in practice with √n (Higham 2002, Accuracy and
   * Stability of Numerical Algorithms, section 4.2). Were it less, a search on the maximum would
   * halve steps that lead to it.
   */
  private static final double ROUNDING = 1e-12;

  /** What half a Newton step may still promise, beside the value, when steps no longer help. */
  private static final double SLACK = 1e-10;

  public NewtonMaximizer {
    if (!(longestStep > 0)) {
      throw new IllegalArgumentException("Longest step must be above 0, not " + longestStep + ".");
    }
    if (steps < 1) {
      throw new IllegalArgumentException("Steps must be at least 1, not " + steps + ".");
    }
  }

  /** Steps of any length, at most 200 of them. */
  public static NewtonMaximizer withDefaults() {
    return new NewtonMaximizer(Double.MAX_VALUE, 200);
  }

  public NewtonMaximizer withLongestStep(double length) {
    return new NewtonMaximizer(length, steps);
  }

  public NewtonMaximizer withSteps(int atMost) {
    return new NewtonMaximizer(longestStep, atMost);
  }

  /** Where a search ended. */
  public sealed interface Outcome permits Maximum, NoMaximum {}

  /**
   * A local maximum, exact to rounding.
   *
   * @param hessian negative definite
   */
  public record Maximum(double[] point, double value, double[] gradient, double[][] hessian)
      implements Outcome {
    /** The inverse of the negative Hessian: the covariance of the normal approximation. */
    public double[][] covariance() {
      RealMatrix inverse =
          new CholeskyDecomposition(new Array2DRowRealMatrix(hessian).scalarMultiply(-1), 1e-8, 0)
              .getSolver()
              .getInverse();
      return inverse.add(inverse.transpose()).scalarMultiply(0.5).getData(); // exactly symmetric
    }
  }

  /**
   * No maximum was reached.
   *
   * @param point the last point
   * @param reason a clause for a message, without a full stop
   */
  public record NoMaximum(double[] point, String reason) implements Outcome {}

  /**
   * Searches from a start to the nearest maximum.
   *
   * @param function what to maximise
   * @param start one value per argument, where the function is finite
   */
  public Outcome maximize(TwiceDifferentiableFunction function, double[] start) {
    Optional<Seen> first = seen(function, start.clone());
    if (first.isEmpty()) {
      return new NoMaximum(start.clone(), "the start lies outside the function's domain");
    }
    Seen seen = first.get();
    for (int step = 0; step < steps; step++) {
      double[] point = seen.point();
      TwiceDifferentiableFunction.Local here = seen.local();
      double[] move = newtonMove(here);
      if (move == null) {
        return new NoMaximum(point, "the slopes are no longer finite numbers");
      }
      double promise = 0.5 * Vectors.dot(here.gradient(), move);
      boolean atRest =
          Vectors.largest(move) <= RESOLUTION * (1 + Vectors.largest(point))
              || promise <= NOTHING * (1 + Math.abs(here.value()));
      Optional<Seen> next =
          atRest ? Optional.empty() : halvedUntilItDoesNotFall(function, seen, move);
      if (next.isEmpty()) {
        return promise <= SLACK * (1 + Math.abs(here.value())) && concave(here)
            ? new Maximum(point, here.value(), here.gradient(), here.hessian())
            : new NoMaximum(point, "the function is flat or has no maximum near here");
      }
      seen = next.get();
    }
    return new NoMaximum(seen.point(), "it was still climbing after " + steps + " steps");
  }

  private record Seen(double[] point, TwiceDifferentiableFunction.Local local) {}

  private static Optional<Seen> seen(TwiceDifferentiableFunction function, double[] point) {
    return function.look(point).map(local -> new Seen(point, local));
  }

  private Optional<Seen> halvedUntilItDoesNotFall(
      TwiceDifferentiableFunction function, Seen from, double[] move) {
    double value = from.local().value();
    double largest = Vectors.largest(move);
    double fraction = largest > longestStep ? longestStep / largest : 1;
    for (int halving = 0; halving <= 40; halving++, fraction /= 2) {
      double[] point = from.point().clone();
      for (int j = 0; j < point.length; j++) {
        point[j] += fraction * move[j];
      }
      Optional<Seen> next = seen(function, point);
      if (next.isPresent()
          && next.get().local().value() >= value - ROUNDING * (1 + Math.abs(value))) {
        return next;
      }
    }
    return Optional.empty();
  }

  private static double[] newtonMove(TwiceDifferentiableFunction.Local here) {
    for (double slope : here.gradient()) {
      if (!Double.isFinite(slope)) {
        return null;
      }
    }
    RealMatrix curvature = curvature(here);
    try {
      return new CholeskyDecomposition(curvature, 1e-8, 0)
          .getSolver()
          .solve(column(here.gradient()))
          .getColumn(0);
    } catch (NonPositiveDefiniteMatrixException notConcave) {
      return moveByEigenvalues(curvature, here.gradient());
    }
  }

  private static double[] moveByEigenvalues(RealMatrix curvature, double[] gradient) {
    EigenDecomposition eigen = new EigenDecomposition(curvature);
    double[] sizes = eigen.getRealEigenvalues();
    double floor = 1e-10 * Math.max(Vectors.largest(sizes), 1e-10);
    double[] move = new double[gradient.length];
    for (int i = 0; i < sizes.length; i++) {
      double[] axis = eigen.getEigenvector(i).toArray();
      double along = Vectors.dot(axis, gradient) / Math.max(Math.abs(sizes[i]), floor);
      for (int j = 0; j < move.length; j++) {
        move[j] += along * axis[j];
      }
    }
    return move;
  }

  private static boolean concave(TwiceDifferentiableFunction.Local here) {
    try {
      new CholeskyDecomposition(curvature(here), 1e-8, 0);
      return true;
    } catch (NonPositiveDefiniteMatrixException saddle) {
      return false;
    }
  }

  private static RealMatrix curvature(TwiceDifferentiableFunction.Local here) {
    return new Array2DRowRealMatrix(here.hessian(), false).scalarMultiply(-1);
  }

  private static RealMatrix column(double[] values) {
    return new Array2DRowRealMatrix(values);
  }
}
