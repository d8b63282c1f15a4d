package charline.stat;

/** A function of n variables with first and second derivatives. */
public interface SmoothFunction {
  /** Value alone; may be negative infinity, never NaN for finite arguments. */
  double value(double[] x);

  /** Value, gradient (n) and Hessian (n x n, symmetric). */
  Expansion expand(double[] x);

  /** A second-order expansion at a point. */
  record Expansion(double value, double[] gradient, double[][] hessian) {}
}
