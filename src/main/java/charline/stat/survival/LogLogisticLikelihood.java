package charline.stat.survival;

import charline.stat.distribution.Exponential;
import charline.stat.linear.Design;
import charline.stat.optimisation.TwiceDifferentiableFunction;
import java.util.ArrayList;
import java.util.List;

/**
 * The log-likelihood of log-logistic times in d = b/scale and t = 1/scale, where z = t ln T - x·d
 * is linear in the arguments. With F the logistic curve,
 *
 * <p>ln(F(z2) - F(z1)) = ln F(z2) + ln F(-z1) + ln(1 - exp(z1 - z2)), which is exact in the tails
 * and shows that it is concave. Columns are divided by their root mean square.
 */
final class LogLogisticLikelihood implements TwiceDifferentiableFunction {
  private final int width;
  private final CensoredTimes times;
  private final double[][] rows;
  private final double[] scales;

  LogLogisticLikelihood(Design design, CensoredTimes times) {
    this.width = design.columnCount();
    this.times = times;
    this.rows = new double[design.rowCount()][];
    this.scales = new double[width];
    for (int i = 0; i < rows.length; i++) {
      rows[i] = design.row(i);
      for (int j = 0; j < width; j++) {
        scales[j] += rows[i][j] * rows[i][j] / rows.length;
      }
    }
    for (int j = 0; j < width; j++) {
      scales[j] = Math.sqrt(scales[j]);
    }
  }

  @Override
  public int dimension() {
    return width + 1;
  }

  double[] start() {
    double[] start = new double[width + 1];
    start[width] = 1;
    return start;
  }

  /** The coefficients b. */
  double[] coefficients(double[] point) {
    double[] coefficients = new double[width];
    for (int j = 0; j < width; j++) {
      coefficients[j] = point[j] / scales[j] / point[width];
    }
    return coefficients;
  }

  /** Derivatives of the arguments in b and, last, ln scale. */
  double[][] jacobian(double[] point) {
    double[][] jacobian = new double[width + 1][width + 1];
    for (int j = 0; j < width; j++) {
      jacobian[j][j] = point[width] * scales[j];
      jacobian[j][width] = -point[j];
    }
    jacobian[width][width] = -point[width];
    return jacobian;
  }

  /** What exact times add for being densities of T rather than of ln T. */
  double logUnits(CensoredTimes all) {
    double sum = 0;
    for (int i = 0; i < all.count(); i++) {
      if (all.kind(i) == CensoredTimes.Kind.EXACT) {
        sum -= Math.log(all.by(i));
      }
    }
    return sum;
  }

  /** Rows whose products with a direction must not be negative for the likelihood not to fall. */
  double[][] neverFalling() {
    List<double[]> result = new ArrayList<>();
    double[] sharper = new double[width + 1];
    sharper[width] = 1;
    result.add(sharper);
    for (int i = 0; i < rows.length; i++) {
      CensoredTimes.Kind kind = times.kind(i);
      if (kind == CensoredTimes.Kind.EXACT) {
        continue;
      }
      if (kind != CensoredTimes.Kind.RIGHT) {
        result.add(z(i, times.by(i), 1));
      }
      if (kind != CensoredTimes.Kind.LEFT) {
        result.add(z(i, times.after(i), -1));
      }
    }
    return result.toArray(double[][]::new);
  }

  /** Rows of exact times, which pull both ways. */
  double[][] level() {
    List<double[]> result = new ArrayList<>();
    for (int i = 0; i < rows.length; i++) {
      if (times.kind(i) == CensoredTimes.Kind.EXACT) {
        result.add(z(i, times.by(i), 1));
      }
    }
    return result.toArray(double[][]::new);
  }

  /** The row whose product with the arguments is sign times z. */
  private double[] z(int row, double time, int sign) {
    double[] z = new double[width + 1];
    for (int j = 0; j < width; j++) {
      z[j] = -sign * rows[row][j] / scales[j];
    }
    z[width] = sign * Math.log(time);
    return z;
  }

  @Override
  public double value(double[] point) {
    return point[width] > 0 ? sum(point, null, null) : Double.NEGATIVE_INFINITY;
  }

  @Override
  public Local local(double[] point) {
    double[] gradient = new double[width + 1];
    double[][] hessian = new double[width + 1][width + 1];
    double value = sum(point, gradient, hessian);
    return new Local(value, gradient, hessian);
  }

  /** The value; adds derivatives where arrays are given. */
  private double sum(double[] point, double[] gradient, double[][] hessian) {
    double inverseScale = point[width];
    double sum = 0;
    for (int i = 0; i < rows.length; i++) {
      CensoredTimes.Kind kind = times.kind(i);
      if (kind != CensoredTimes.Kind.RIGHT) {
        sum += logCurve(z(i, times.by(i), 1), point, gradient, hessian);
      }
      if (kind != CensoredTimes.Kind.LEFT) {
        sum += logCurve(z(i, times.after(i), -1), point, gradient, hessian);
      }
      if (kind == CensoredTimes.Kind.EXACT) {
        sum += Math.log(inverseScale);
        addInScale(gradient, hessian, 1 / inverseScale, -1 / (inverseScale * inverseScale));
      } else if (kind == CensoredTimes.Kind.INTERVAL) {
        double span = Math.log(times.by(i)) - Math.log(times.after(i));
        double gap = inverseScale * span;
        double rise = 1 / Math.expm1(gap);
        sum += Math.log(Exponential.cdf(gap));
        addInScale(gradient, hessian, span * rise, -span * span * rise * (1 + rise));
      }
    }
    return sum;
  }

  private void addInScale(double[] gradient, double[][] hessian, double slope, double bend) {
    if (gradient != null) {
      gradient[width] += slope;
      hessian[width][width] += bend;
    }
  }

  /** ln F(row·point). */
  private static double logCurve(
      double[] row, double[] point, double[] gradient, double[][] hessian) {
    double z = 0;
    for (int j = 0; j < row.length; j++) {
      z += row[j] * point[j];
    }
    if (gradient != null) {
      double up = 1 / (1 + Math.exp(z));
      double down = 1 / (1 + Math.exp(-z));
      for (int j = 0; j < row.length; j++) {
        gradient[j] += up * row[j];
        for (int k = 0; k <= j; k++) {
          hessian[j][k] -= up * down * row[j] * row[k];
          hessian[k][j] = hessian[j][k];
        }
      }
    }
    return z < 0 ? z - Math.log1p(Math.exp(z)) : -Math.log1p(Math.exp(-z));
  }
}
