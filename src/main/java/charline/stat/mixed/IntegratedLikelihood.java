package charline.stat.mixed;

import charline.stat.distribution.Logistic;
import charline.stat.optimisation.TwiceDifferentiableFunction;
import charline.stat.quadrature.NormalTrapezoid;
import charline.stat.regression.BinomialSample;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The log-likelihood of a logistic regression with a random intercept s u per group, u standard
 * normal and integrated out on a grid. Arguments are the coefficients on the orthogonal basis and
 * s, which may have either sign and means the same with both.
 *
 * <p>The grid does not move with the arguments, so the function is smooth and its derivatives are
 * exact: with p the posterior weight of each node, the gradient of a group is the mean of its score
 * (Fisher's identity) and the Hessian the mean of its bend plus the covariance of its score (Louis
 * 1982, JRSS B 44:226-233).
 */
public final class IntegratedLikelihood implements TwiceDifferentiableFunction {
  private final BinomialSample sample;
  private final double[][] q;
  private final int[][] members;
  private final double largest;
  private final NormalTrapezoid grid;

  /**
   * The likelihood of a sample.
   *
   * @param group of each row, counted from 0
   * @param groups how many
   * @param largest standard deviation in the domain
   */
  public IntegratedLikelihood(BinomialSample sample, int[] group, int groups, double largest) {
    this.sample = sample;
    this.q = sample.design().basis().q();
    this.largest = largest;
    this.members =
        IntStream.range(0, groups)
            .mapToObj(g -> IntStream.range(0, group.length).filter(i -> group[i] == g).toArray())
            .toArray(int[][]::new);
    int most =
        Arrays.stream(members)
            .mapToInt(rows -> IntStream.of(rows).map(sample::trials).sum())
            .max()
            .orElse(0);
    this.grid = NormalTrapezoid.forLogistic(most, largest);
  }

  @Override
  public int dimension() {
    return q[0].length + 1;
  }

  @Override
  public double value(double[] point) {
    double s = point[q[0].length];
    return Math.abs(s) > largest
        ? Double.NEGATIVE_INFINITY
        : Arrays.stream(members)
            .mapToDouble(rows -> weigh(rows, point, new double[grid.points()]))
            .sum();
  }

  @Override
  public Optional<Local> look(double[] point) {
    return Math.abs(point[q[0].length]) > largest ? Optional.empty() : Optional.of(local(point));
  }

  @Override
  public Local local(double[] point) {
    int width = dimension();
    double value = 0;
    double[] gradient = new double[width];
    double[][] hessian = new double[width][width];
    double[] posterior = new double[grid.points()];
    for (int[] rows : members) {
      value += weigh(rows, point, posterior);
      double[] mean = new double[width];
      for (int n = 0; n < posterior.length; n++) {
        if (posterior[n] > 0) {
          addNode(rows, point, n, posterior[n], mean, hessian);
        }
      }
      for (int j = 0; j < width; j++) {
        gradient[j] += mean[j];
        for (int k = 0; k <= j; k++) {
          hessian[j][k] -= mean[j] * mean[k];
        }
      }
    }
    for (int j = 0; j < width; j++) {
      for (int k = 0; k < j; k++) {
        hessian[k][j] = hessian[j][k];
      }
    }
    return new Local(value, gradient, hessian);
  }

  /** A group's log-likelihood; fills in the posterior weight of each node, which add up to 1. */
  private double weigh(int[] rows, double[] point, double[] posterior) {
    double s = point[q[0].length];
    for (int n = 0; n < posterior.length; n++) {
      posterior[n] = Math.log(grid.weight(n));
    }
    for (int i : rows) {
      double fixed = fixed(i, point);
      int events = sample.events(i);
      int others = sample.trials(i) - events;
      for (int n = 0; n < posterior.length; n++) {
        double eta = fixed + s * grid.node(n);
        posterior[n] += events == 0 ? 0 : events * Logistic.logCdf(eta);
        posterior[n] += others == 0 ? 0 : others * Logistic.logCdf(-eta);
      }
    }
    double top = Arrays.stream(posterior).max().orElseThrow();
    double sum = 0;
    for (int n = 0; n < posterior.length; n++) {
      posterior[n] = Math.exp(posterior[n] - top);
      sum += posterior[n];
    }
    for (int n = 0; n < posterior.length; n++) {
      posterior[n] /= sum;
    }
    return top + Math.log(sum);
  }

  /** Adds what one node says: its score, and the square of that with the bend. */
  private void addNode(
      int[] rows, double[] point, int node, double p, double[] mean, double[][] hessian) {
    int width = mean.length;
    double u = grid.node(node);
    double[] score = new double[width];
    for (int i : rows) {
      double risk = Logistic.cdf(fixed(i, point) + point[width - 1] * u);
      double residual = sample.events(i) - sample.trials(i) * risk;
      double bend = p * sample.trials(i) * risk * (1 - risk);
      for (int j = 0; j < width; j++) {
        double along = j < width - 1 ? q[i][j] : u;
        score[j] += residual * along;
        for (int k = 0; k <= j; k++) {
          hessian[j][k] -= bend * along * (k < width - 1 ? q[i][k] : u);
        }
      }
    }
    for (int j = 0; j < width; j++) {
      mean[j] += p * score[j];
      for (int k = 0; k <= j; k++) {
        hessian[j][k] += p * score[j] * score[k];
      }
    }
  }

  private double fixed(int row, double[] point) {
    double fixed = 0;
    for (int j = 0; j < q[row].length; j++) {
      fixed += q[row][j] * point[j];
    }
    return fixed;
  }
}
