package charline.stat.optimisation;

import java.util.Arrays;
import java.util.Optional;

/** A function with two derivatives, to be made as large as possible. */
public interface TwiceDifferentiableFunction {

  /** Number of arguments, at least 1. */
  int dimension();

  /** The value at a point of that dimension; negative infinity outside the function's domain. */
  double value(double[] point);

  /** Value, gradient and Hessian at a point where {@link #value} is finite. */
  Local local(double[] point);

  /** As {@link #local}; empty where the value is not finite. One pass for both saves half. */
  default Optional<Local> look(double[] point) {
    return Double.isFinite(value(point)) ? Optional.of(local(point)) : Optional.empty();
  }

  /**
   * A function seen from one point.
   *
   * @param value finite
   * @param gradient one slope per argument
   * @param hessian square and exactly symmetric; it need not be negative definite
   */
  record Local(double value, double[] gradient, double[][] hessian) {
    /** The information, where the function is a log-likelihood. */
    public double[][] negatedHessian() {
      return Arrays.stream(hessian)
          .map(row -> Arrays.stream(row).map(bend -> -bend).toArray())
          .toArray(double[][]::new);
    }
  }
}
