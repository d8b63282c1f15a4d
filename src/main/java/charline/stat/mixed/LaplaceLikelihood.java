package charline.stat.mixed;

import charline.stat.distribution.Logistic;
import charline.stat.optimisation.TwiceDifferentiableFunction;
import charline.stat.regression.BinomialSample;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The log-likelihood of a logistic regression with a random intercept s u per group, u standard
 * normal: for each group the joint density at its mode over u and the curvature there. Arguments
 * are the coefficients on the orthogonal basis and s, which may have either sign and means the same
 * with both.
 *
 * <p>The gradient is exact; the Hessian is its central difference, good to about 1e-9.
 */
public final class LaplaceLikelihood implements TwiceDifferentiableFunction {
  private static final double DIFFERENCE = 1e-5;

  /** A step of a mode this short, beside 1 and the mode, is rounding. */
  private static final double SETTLED = 1e-13;

  private final BinomialSample sample;
  private final double[][] q;
  private final int[] group;
  private final int groups;
  private final double largest;

  /**
   * The likelihood of a sample.
   *
   * @param group of each row, counted from 0
   * @param groups how many
   * @param largest standard deviation in the domain
   */
  public LaplaceLikelihood(BinomialSample sample, int[] group, int groups, double largest) {
    this.sample = sample;
    this.q = sample.design().basis().q();
    this.group = group;
    this.groups = groups;
    this.largest = largest;
  }

  @Override
  public int dimension() {
    return q[0].length + 1;
  }

  @Override
  public double value(double[] point) {
    double s = point[q[0].length];
    if (Math.abs(s) > largest) {
      return Double.NEGATIVE_INFINITY;
    }
    double[] fixed = fixed(point);
    double[] u = modes(fixed, s);
    double[] weight = new double[groups];
    double sum = 0;
    for (int i = 0; i < q.length; i++) {
      double eta = fixed[i] + s * u[group[i]];
      int events = sample.events(i);
      sum += events * Logistic.logCdf(eta);
      sum += (sample.trials(i) - events) * Logistic.logCdf(-eta);
      weight[group[i]] += sample.trials(i) * Logistic.density(eta);
    }
    for (int g = 0; g < groups; g++) {
      sum -= 0.5 * (u[g] * u[g] + Math.log1p(s * s * weight[g]));
    }
    return sum;
  }

  @Override
  public Local local(double[] point) {
    int width = dimension();
    double[][] hessian = new double[width][];
    for (int j = 0; j < width; j++) {
      double step = DIFFERENCE * (1 + Math.abs(point[j]));
      double[] above = point.clone();
      double[] below = point.clone();
      above[j] += step;
      below[j] -= step;
      double[] up = gradient(above);
      double[] down = gradient(below);
      hessian[j] = new double[width];
      for (int k = 0; k < width; k++) {
        hessian[j][k] = (up[k] - down[k]) / (above[j] - below[j]);
      }
    }
    for (int j = 0; j < width; j++) {
      for (int k = 0; k < j; k++) {
        hessian[j][k] = hessian[k][j] = 0.5 * (hessian[j][k] + hessian[k][j]);
      }
    }
    return new Local(value(point), gradient(point), hessian);
  }

  /**
   * With D = 1 + s² sum w: by the envelope theorem the joint density moves with the arguments
   * directly, and log D moves with them both directly and through the mode.
   */
  private double[] gradient(double[] point) {
    int width = q[0].length;
    double s = point[width];
    double[] fixed = fixed(point);
    double[] u = modes(fixed, s);
    double[] residual = new double[groups];
    double[] weight = new double[groups];
    double[] skew = new double[groups];
    double[][] weighted = new double[groups][width];
    double[][] skewed = new double[groups][width];
    double[] gradient = new double[width + 1];
    for (int i = 0; i < q.length; i++) {
      int g = group[i];
      double eta = fixed[i] + s * u[g];
      double p = Logistic.cdf(eta);
      double r = sample.events(i) - sample.trials(i) * p;
      double w = sample.trials(i) * Logistic.density(eta);
      double t = w * (1 - 2 * p);
      residual[g] += r;
      weight[g] += w;
      skew[g] += t;
      for (int j = 0; j < width; j++) {
        gradient[j] += r * q[i][j];
        weighted[g][j] += w * q[i][j];
        skewed[g][j] += t * q[i][j];
      }
    }
    for (int g = 0; g < groups; g++) {
      double d = 1 + s * s * weight[g];
      for (int j = 0; j < width; j++) {
        double modeMoves = -s * weighted[g][j] / d;
        gradient[j] -= 0.5 * s * s * (skewed[g][j] + s * modeMoves * skew[g]) / d;
      }
      double modeMoves = (residual[g] - s * u[g] * weight[g]) / d;
      gradient[width] +=
          u[g] * residual[g]
              - 0.5 * (2 * s * weight[g] + s * s * skew[g] * (u[g] + s * modeMoves)) / d;
    }
    return gradient;
  }

  /** Mode and spread of every group's intercept. */
  List<RandomInterceptFit.Group> groups(double[] point, List<String> labels) {
    double s = point[q[0].length];
    double[] fixed = fixed(point);
    double[] u = modes(fixed, s);
    double[] weight = new double[groups];
    for (int i = 0; i < q.length; i++) {
      weight[group[i]] += sample.trials(i) * Logistic.density(fixed[i] + s * u[group[i]]);
    }
    List<RandomInterceptFit.Group> result = new ArrayList<>();
    for (int g = 0; g < groups; g++) {
      result.add(
          new RandomInterceptFit.Group(
              labels.get(g), s * u[g], Math.abs(s) / Math.sqrt(1 + s * s * weight[g])));
    }
    return result;
  }

  private double[] fixed(double[] point) {
    double[] fixed = new double[q.length];
    for (int i = 0; i < q.length; i++) {
      for (int j = 0; j < q[i].length; j++) {
        fixed[i] += q[i][j] * point[j];
      }
    }
    return fixed;
  }

  /**
   * Newton's method for all groups at once. Each is concave in its u, so the sign of its slope says
   * on which side the mode lies; a step that does not end inside what is known so far is replaced
   * by halving it.
   */
  private double[] modes(double[] fixed, double s) {
    double[] u = new double[groups];
    double[] low = new double[groups];
    double[] high = new double[groups];
    Arrays.fill(low, Double.NEGATIVE_INFINITY);
    Arrays.fill(high, Double.POSITIVE_INFINITY);
    for (int round = 0; round < 200; round++) {
      double[] slope = new double[groups];
      double[] bend = new double[groups];
      for (int i = 0; i < q.length; i++) {
        double eta = fixed[i] + s * u[group[i]];
        slope[group[i]] += s * (sample.events(i) - sample.trials(i) * Logistic.cdf(eta));
        bend[group[i]] += s * s * sample.trials(i) * Logistic.density(eta);
      }
      double longest = 0;
      for (int g = 0; g < groups; g++) {
        double rise = slope[g] - u[g];
        low[g] = rise > 0 ? u[g] : low[g];
        high[g] = rise < 0 ? u[g] : high[g];
        double next = u[g] + Math.max(-2, Math.min(2, rise / (bend[g] + 1)));
        double step = Math.abs(next - u[g]) / (1 + Math.abs(next));
        if (step >= SETTLED && (next <= low[g] || next >= high[g])) {
          next = 0.5 * (low[g] + high[g]); // the ends are known already: to go back is to cycle
          step = Math.abs(next - u[g]) / (1 + Math.abs(next));
        }
        longest = Math.max(longest, step);
        u[g] = next;
      }
      if (longest < SETTLED) {
        break;
      }
    }
    return u;
  }
}
