package charline.stat.linear;

import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * The columns of a design made orthogonal, each of mean square 1: X = Q R. Fits run on Q, where no
 * unit of measurement makes a step long or short, and are carried back by R.
 *
 * @param q one row per observation
 * @param r upper triangular
 * @param inverse of r
 * @param logDeterminant log |det R|
 */
public record OrthogonalBasis(
    double[][] q, double[][] r, double[][] inverse, double logDeterminant) {
  /** A column left with less than this part of its length is a combination of the others. */
  private static final double INDEPENDENT = 1e-9;

  static OrthogonalBasis of(List<String> names, double[][] rows) {
    RealMatrix x = new Array2DRowRealMatrix(rows, false);
    int columns = names.size();
    RealMatrix r =
        new QRDecomposition(x)
            .getR()
            .getSubMatrix(0, columns - 1, 0, columns - 1)
            .scalarMultiply(1 / Math.sqrt(rows.length));
    double logDeterminant = 0;
    for (int j = 0; j < columns; j++) {
      double rest = Math.abs(r.getEntry(j, j));
      double length = x.getColumnVector(j).getNorm() / Math.sqrt(rows.length);
      if (!(rest > INDEPENDENT * length)) {
        throw dependent(names, j, length);
      }
      logDeterminant += Math.log(rest);
    }
    RealMatrix inverse = MatrixUtils.inverse(r);
    return new OrthogonalBasis(
        x.multiply(inverse).getData(), r.getData(), inverse.getData(), logDeterminant);
  }

  private static IllegalArgumentException dependent(List<String> names, int column, double length) {
    String name = names.get(column);
    return new IllegalArgumentException(
        length == 0
            ? "Column '" + name + "' must not be 0 in every row; leave it out."
            : "Column '%s' must not be a combination of %s; leave one of them out."
                .formatted(name, names.subList(0, column)));
  }

  /** Coefficients of Q from coefficients of X. */
  public double[] inward(double[] coefficients) {
    return matrix(r).operate(coefficients);
  }

  /** Coefficients of X from coefficients of Q. */
  public double[] outward(double[] coefficients) {
    return matrix(inverse).operate(coefficients);
  }

  /**
   * The vector that gives the same product with coefficients of Q as {@code row} with those of X.
   */
  public double[] inwardRow(double[] row) {
    return matrix(inverse).preMultiply(row);
  }

  /** A covariance of coefficients of X from one of coefficients of Q. */
  public double[][] outwardCovariance(double[][] covariance) {
    RealMatrix outward = matrix(inverse);
    return outward.multiply(matrix(covariance)).multiply(outward.transpose()).getData();
  }

  /** The covariance of coefficients of X from the information about those of Q. */
  public double[][] covariance(double[][] information) {
    return outwardCovariance(
        new CholeskyDecomposition(matrix(information), 1e-8, 0).getSolver().getInverse().getData());
  }

  private static RealMatrix matrix(double[][] values) {
    return new Array2DRowRealMatrix(values, false);
  }
}
