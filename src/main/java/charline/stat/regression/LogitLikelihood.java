package charline.stat.regression;

import charline.stat.optimisation.TwiceDifferentiableFunction;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The log-likelihood of a binomial sample under the logit link on the orthogonal basis, constants
 * left out. Value and slopes come from one pass with one exponential a row. Rows are summed in
 * pieces of fixed size, the pieces on all cores and added in their order, so that a result does not
 * depend on how many cores there are.
 */
final class LogitLikelihood implements TwiceDifferentiableFunction {
  private static final int PIECE = 8192;

  /** A product of factors up to 2 is turned into its logarithm before it overflows. */
  private static final double LARGE = 1e300;

  private final double[][] q;
  private final double[] events;
  private final double[] trials;

  LogitLikelihood(GroupedRows counts) {
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
    return local(point).value();
  }

  @Override
  public Optional<Local> look(double[] point) {
    return Optional.of(local(point)).filter(local -> Double.isFinite(local.value()));
  }

  @Override
  public Local local(double[] point) {
    int width = dimension();
    double[] sums = sums(point);
    double[] gradient = new double[width];
    double[][] hessian = new double[width][width];
    System.arraycopy(sums, 1, gradient, 0, width);
    int at = 1 + width;
    for (int r = 0; r < width; r++) {
      for (int s = 0; s <= r; s++) {
        hessian[r][s] = -sums[at++];
        hessian[s][r] = hessian[r][s];
      }
    }
    return new Local(sums[0], gradient, hessian);
  }

  private double[] sums(double[] point) {
    int pieces = (q.length + PIECE - 1) / PIECE;
    if (pieces == 1) {
      return sums(point, 0, q.length);
    }
    double[][] parts =
        IntStream.range(0, pieces)
            .parallel()
            .mapToObj(k -> sums(point, k * PIECE, Math.min((k + 1) * PIECE, q.length)))
            .toArray(double[][]::new);
    for (int k = 1; k < pieces; k++) {
      for (int j = 0; j < parts[0].length; j++) {
        parts[0][j] += parts[k][j];
      }
    }
    return parts[0];
  }

  /** Value, gradient and the lower triangle of the information, row by row, of some rows. */
  private double[] sums(double[] point, int from, int to) {
    int width = point.length;
    double[] sums = new double[1 + width + width * (width + 1) / 2];
    double value = 0;
    double product = 1; // of 1 + exp(-|eta|), so that few logarithms are taken
    for (int i = from; i < to; i++) {
      double[] row = q[i];
      double eta = 0;
      for (int j = 0; j < width; j++) {
        eta += row[j] * point[j];
      }
      double tail = Math.exp(-Math.abs(eta));
      double larger = 1 / (1 + tail);
      double smaller = tail * larger;
      double others = trials[i] - events[i];
      double slope =
          eta < 0 ? events[i] * larger - others * smaller : events[i] * smaller - others * larger;
      value -= eta < 0 ? -events[i] * eta : others * eta;
      if (trials[i] == 1) {
        product *= 1 + tail;
        if (product > LARGE) {
          value -= Math.log(product);
          product = 1;
        }
      } else {
        value -= trials[i] * Math.log1p(tail);
      }
      double weight = trials[i] * smaller * larger;
      int at = 1 + width;
      for (int r = 0; r < width; r++) {
        sums[1 + r] += slope * row[r];
        double weighted = weight * row[r];
        for (int s = 0; s <= r; s++) {
          sums[at++] += weighted * row[s];
        }
      }
    }
    sums[0] = value - Math.log(product);
    return sums;
  }
}
