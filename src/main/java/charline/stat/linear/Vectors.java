package charline.stat.linear;

/** Arrays as vectors and matrices. */
public final class Vectors {
  private Vectors() {}

  /** The inner product of two vectors of the same length. */
  public static double dot(double[] left, double[] right) {
    double sum = 0;
    for (int j = 0; j < left.length; j++) {
      sum += left[j] * right[j];
    }
    return sum;
  }

  /** The largest absolute value, 0 for no values. */
  public static double largest(double[] values) {
    double largest = 0;
    for (double value : values) {
      largest = Math.max(largest, Math.abs(value));
    }
    return largest;
  }

  /** A copy that shares no row with the matrix. */
  public static double[][] copy(double[][] matrix) {
    double[][] result = new double[matrix.length][];
    for (int i = 0; i < result.length; i++) {
      result[i] = matrix[i].clone();
    }
    return result;
  }
}
