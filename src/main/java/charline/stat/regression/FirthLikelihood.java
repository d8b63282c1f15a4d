package charline.stat.regression;

import charline.stat.Smooth;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * The logistic log-likelihood plus half the log determinant of its information, on the orthogonal
 * basis (Firth 1993, Biometrika 80:27-38). It is not concave: along a constraint it can have two
 * maxima.
 */
final class FirthLikelihood implements Smooth {
  private final Counts counts;
  private final double[][] q;

  FirthLikelihood(BinomialSample sample) {
    this.counts = Counts.of(sample);
    this.q = counts.q();
  }

  @Override
  public int dimension() {
    return q[0].length;
  }

  @Override
  public double value(double[] point) {
    return at(point).value;
  }

  /**
   * With z the rows of Q over the root of the information, z·z w their leverages and a = w (1 -
   * 2p), the penalty has the gradient Q'(a z·z / 2) and the Hessian Q' diag(w (1-2p)² / 2 - w p
   * (1-p)) z·z Q - 1/2 sum of M_r M_s, where M_r = sum of a q_r z z'.
   */
  @Override
  public Local local(double[] point) {
    int width = dimension();
    At here = at(point);
    RealMatrix inverseRoot = new LUDecomposition(here.root.getL(), 0).getSolver().getInverse();
    double[] gradient = new double[width];
    double[][] hessian = new double[width][width];
    double[][] moments = new double[width][width * width];
    for (int i = 0; i < q.length; i++) {
      double p = here.risk[i];
      double w = here.weight[i];
      double[] z = inverseRoot.operate(q[i]);
      double length = Design.dot(z, z);
      double tilt = 1 - 2 * p;
      double a = w * tilt;
      BinomialLikelihood.addOuter(
          gradient,
          hessian,
          q[i],
          counts.events()[i] - counts.trials()[i] * p + 0.5 * a * length,
          -w + (0.5 * a * tilt - w * p * (1 - p)) * length);
      addMoments(moments, q[i], z, a);
    }
    for (int r = 0; r < width; r++) {
      for (int s = 0; s <= r; s++) {
        hessian[r][s] -= 0.5 * Design.dot(moments[r], moments[s]);
        hessian[s][r] = hessian[r][s];
      }
    }
    return new Local(here.value, gradient, hessian);
  }

  private static void addMoments(double[][] moments, double[] row, double[] z, double a) {
    int width = z.length;
    for (int j = 0; j < width; j++) {
      for (int k = 0; k < width; k++) {
        double product = a * z[j] * z[k];
        for (int r = 0; r < width; r++) {
          moments[r][j * width + k] += row[r] * product;
        }
      }
    }
  }

  /** Everything about a point that value and slopes share; no root where it is out of bounds. */
  private record At(double value, double[] risk, double[] weight, CholeskyDecomposition root) {}

  private At at(double[] point) {
    int width = dimension();
    double[] risk = new double[q.length];
    double[] weight = new double[q.length];
    double[] unused = new double[width];
    double[][] information = new double[width][width];
    double value = 0;
    for (int i = 0; i < q.length; i++) {
      double eta = Design.dot(q[i], point);
      double tail = Math.exp(-Math.abs(eta));
      double larger = 1 / (1 + tail);
      risk[i] = eta < 0 ? tail * larger : larger;
      weight[i] = counts.trials()[i] * tail * larger * larger;
      value +=
          counts.events()[i] * eta - counts.trials()[i] * (Math.max(eta, 0) + Math.log1p(tail));
      BinomialLikelihood.addOuter(unused, information, q[i], 0, weight[i]);
    }
    CholeskyDecomposition root = root(information);
    if (root == null) {
      return new At(Double.NEGATIVE_INFINITY, risk, weight, null);
    }
    RealMatrix lower = root.getL();
    for (int j = 0; j < width; j++) {
      value += Math.log(lower.getEntry(j, j));
    }
    return new At(value, risk, weight, root);
  }

  private static CholeskyDecomposition root(double[][] rows) {
    RealMatrix information = new Array2DRowRealMatrix(rows, false);
    double trace = information.getTrace();
    if (!(trace > 0) || Double.isInfinite(trace)) {
      return null;
    }
    try {
      return new CholeskyDecomposition(information, 1e-8, 1e-15 * trace);
    } catch (NonPositiveDefiniteMatrixException singular) {
      return null;
    }
  }
}
