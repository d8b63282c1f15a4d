package charline.stat.regression;

import charline.stat.linear.Vectors;
import charline.stat.optimisation.TwiceDifferentiableFunction;
import java.util.Optional;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * The logistic log-likelihood plus half the log determinant of its information, on the orthogonal
 * basis (Firth 1993, Biometrika 80:27-38). It is not concave: along a constraint it can have two
 * maxima.
 */
public final class FirthLikelihood implements TwiceDifferentiableFunction {
  private static final double ROOT_TWO = Math.sqrt(2);

  /** How far the proof of a highest maximum looks, in linear predictors. */
  private static final int FURTHEST = 4;

  private final double[][] q;
  private final double[] events;
  private final double[] trials;

  public FirthLikelihood(BinomialSample sample) {
    this(GroupedRows.of(sample));
  }

  FirthLikelihood(GroupedRows counts) {
    q = counts.q();
    events = counts.events();
    trials = counts.trials();
  }

  @Override
  public int dimension() {
    return q[0].length;
  }

  @Override
  public double value(double[] point) {
    return at(point).value;
  }

  @Override
  public Local local(double[] point) {
    return slopes(at(point));
  }

  @Override
  public Optional<Local> look(double[] point) {
    return Optional.of(at(point)).filter(here -> here.root != null).map(this::slopes);
  }

  /**
   * With z the rows of Q over the root of the information, z·z w their leverages and a = w (1 -
   * 2p), the penalty has the gradient Q'(a z·z / 2) and the Hessian Q' diag(w (1-2p)² / 2 - w p
   * (1-p)) z·z Q - 1/2 sum of M_r M_s, where M_r = sum of a q_r z z'.
   */
  private Local slopes(At here) {
    int width = dimension();
    double[] gradient = new double[width];
    double[][] hessian = new double[width][width];
    double[][] moments = new double[width][width * (width + 1) / 2];
    double[] z = new double[width];
    for (int i = 0; i < q.length; i++) {
      double p = here.risk[i];
      double w = here.weight[i];
      double length = overRoot(q[i], here.root, z);
      double tilt = 1 - 2 * p;
      double a = w * tilt;
      addOuter(
          gradient,
          hessian,
          q[i],
          events[i] - trials[i] * p + 0.5 * a * length,
          -w + (0.5 * a * tilt - w * p * (1 - p)) * length);
      addMoments(moments, q[i], z, a);
    }
    for (int r = 0; r < width; r++) {
      for (int s = 0; s <= r; s++) {
        hessian[r][s] -= 0.5 * Vectors.dot(moments[r], moments[s]);
        hessian[s][r] = hessian[r][s];
      }
    }
    return new Local(here.value, gradient, hessian);
  }

  /** Adds slope times row, and bend times its square, which stays exactly symmetric. */
  static void addOuter(
      double[] gradient, double[][] hessian, double[] row, double slope, double bend) {
    for (int r = 0; r < row.length; r++) {
      gradient[r] += slope * row[r];
      for (int s = 0; s <= r; s++) {
        hessian[r][s] += bend * row[r] * row[s];
        hessian[s][r] = hessian[r][s];
      }
    }
  }

  /** Fills z with a row over the root of the information; gives its squared length. */
  private static double overRoot(double[] row, double[][] root, double[] z) {
    double length = 0;
    for (int j = 0; j < z.length; j++) {
      double rest = row[j];
      for (int k = 0; k < j; k++) {
        rest -= root[j][k] * z[k];
      }
      z[j] = rest / root[j][j];
      length += z[j] * z[j];
    }
    return length;
  }

  /** Lower triangles; what lies beside the diagonal counts twice, so the root of 2 is in it. */
  private static void addMoments(double[][] moments, double[] row, double[] z, double a) {
    int at = 0;
    for (int j = 0; j < z.length; j++) {
      for (int k = 0; k <= j; k++) {
        double product = a * z[j] * z[k] * (k < j ? ROOT_TWO : 1);
        for (int r = 0; r < row.length; r++) {
          moments[r][at] += row[r] * product;
        }
        at++;
      }
    }
  }

  /**
   * True if a local maximum in a plane, or of all, is surely the highest there; false says nothing.
   *
   * <p>Write I for the information at the point, H for the largest q'I⁻¹q of a row, d for a
   * direction with d'Id = 1, k for the number of coefficients and u = t √H for how far a predictor
   * may have moved at the point + t d. Since |w'| ≤ w and |w''| ≤ w, the information there is at
   * least e^-u I, the penalty bends up by at most e^u H / 2 times the information and changes by at
   * most k √H / 2 a unit of t. So up to any u the objective bends down by at least c e^-u, c = 1 -
   * e^u H / 2. From there on the concave log-likelihood falls if the slope that has gathered, c (1
   * - e^-u) / √H, exceeds k √H / 2; and the objective stays below the point if the drop that has
   * gathered, c (u - 1 + e^-u) / H, exceeds all that the penalty may have gained: k u / 2 on the
   * way, then what it lacks of its largest, where w is a quarter of the trials.
   */
  public boolean surelyHighest(double[] point) {
    At here = at(point);
    if (here.root == null) {
      return false;
    }
    double reach = 0;
    double[] z = new double[dimension()];
    for (double[] row : q) {
      reach = Math.max(reach, overRoot(row, here.root, z));
    }
    double lacking = largestPenalty() - here.penalty;
    for (int u = 1; u <= FURTHEST; u++) {
      double bend = 1 - 0.5 * Math.exp(u) * reach;
      double slope = bend * (1 - Math.exp(-u)) / reach;
      double drop = bend * (u - 1 + Math.exp(-u)) / reach;
      if (slope > 0.5 * dimension() && drop > lacking + 0.5 * dimension() * u) {
        return true;
      }
    }
    return false;
  }

  private double largestPenalty() {
    double[][] information = new double[dimension()][dimension()];
    for (int i = 0; i < q.length; i++) {
      addSquare(information, q[i], 0.25 * trials[i]);
    }
    return halfLogDeterminant(root(information));
  }

  /** Everything about a point that value and slopes share; no root where it is out of bounds. */
  private record At(
      double value, double penalty, double[] risk, double[] weight, double[][] root) {}

  private At at(double[] point) {
    double[] risk = new double[q.length];
    double[] weight = new double[q.length];
    double[][] information = new double[dimension()][dimension()];
    double value = 0;
    for (int i = 0; i < q.length; i++) {
      double eta = Vectors.dot(q[i], point);
      double tail = Math.exp(-Math.abs(eta));
      double larger = 1 / (1 + tail);
      risk[i] = eta < 0 ? tail * larger : larger;
      weight[i] = trials[i] * tail * larger * larger;
      value += events[i] * eta - trials[i] * (Math.max(eta, 0) + Math.log1p(tail));
      addSquare(information, q[i], weight[i]);
    }
    double[][] root = root(information);
    double penalty = root == null ? Double.NEGATIVE_INFINITY : halfLogDeterminant(root);
    return new At(value + penalty, penalty, risk, weight, root);
  }

  /** Adds to the lower triangle. */
  private static void addSquare(double[][] information, double[] row, double weight) {
    for (int r = 0; r < row.length; r++) {
      double weighted = weight * row[r];
      for (int s = 0; s <= r; s++) {
        information[r][s] += weighted * row[s];
      }
    }
  }

  private static double halfLogDeterminant(double[][] root) {
    double sum = 0;
    for (int j = 0; j < root.length; j++) {
      sum += Math.log(root[j][j]);
    }
    return sum;
  }

  /** The lower triangular root of a matrix given by its lower triangle; null if singular. */
  private static double[][] root(double[][] lower) {
    for (int r = 0; r < lower.length; r++) {
      for (int s = 0; s < r; s++) {
        lower[s][r] = lower[r][s];
      }
    }
    RealMatrix information = new Array2DRowRealMatrix(lower, false);
    double trace = information.getTrace();
    if (!(trace > 0) || Double.isInfinite(trace)) {
      return null;
    }
    try {
      return new CholeskyDecomposition(information, 1e-8, 1e-15 * trace).getL().getData();
    } catch (NonPositiveDefiniteMatrixException singular) {
      return null;
    }
  }
}
