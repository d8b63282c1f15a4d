package charline.stat.regression;

import charline.stat.distribution.Exponential;
import charline.stat.linear.Vectors;
import charline.stat.optimisation.TwiceDifferentiableFunction;
import java.util.Arrays;
import java.util.Optional;

/**
 * A logistic objective in which some pairs of rows are two looks at one unit. The chance that its
 * event comes between linear predictors a and b is, for the logistic, exactly
 *
 * <pre>  L(b) - L(a) = L(b) L(-a) (1 - exp(-(b - a))),</pre>
 *
 * a success, a failure, and a factor that the rows alone lack. Without it a narrow bracket speaks
 * for no slope at all, and slopes come out far too flat. The factor's logarithm is concave.
 *
 * <p>Below a gap of 1e-6 it goes on as a parabola with the same slopes, so that every point is a
 * start; estimates keep away from there, as the logarithm falls steeply.
 *
 * @param rows the objective of the rows
 * @param gaps covariates after less covariates before, on the orthogonal basis
 */
public record IntervalCensored(TwiceDifferentiableFunction rows, double[][] gaps)
    implements TwiceDifferentiableFunction {
  private static final double NARROWEST = 1e-6;

  /** Adds the brackets of a sample to the objective of its rows. */
  public static TwiceDifferentiableFunction of(
      TwiceDifferentiableFunction rows, BinomialSample sample) {
    return sample.brackets().isEmpty() ? rows : new IntervalCensored(rows, gaps(sample));
  }

  /**
   * Adds the brackets to an objective with further arguments behind the coefficients. What shifts
   * both predictors of a unit alike, as a random intercept does, leaves their gap as it is, so the
   * factor is the same whatever the shift.
   */
  public static TwiceDifferentiableFunction of(
      TwiceDifferentiableFunction rows, BinomialSample sample, int further) {
    return sample.brackets().isEmpty()
        ? rows
        : new IntervalCensored(
            rows,
            Arrays.stream(gaps(sample))
                .map(gap -> Arrays.copyOf(gap, gap.length + further))
                .toArray(double[][]::new));
  }

  private static double[][] gaps(BinomialSample sample) {
    double[][] q = sample.design().basis().q();
    return sample.brackets().stream()
        .map(
            pair -> {
              double[] gap = q[pair.after()].clone();
              for (int j = 0; j < gap.length; j++) {
                gap[j] -= q[pair.before()][j];
              }
              return gap;
            })
        .toArray(double[][]::new);
  }

  @Override
  public int dimension() {
    return rows.dimension();
  }

  @Override
  public double value(double[] point) {
    double sum = rows.value(point);
    for (double[] gap : gaps) {
      sum += expand(Vectors.dot(gap, point))[0];
    }
    return sum;
  }

  @Override
  public Local local(double[] point) {
    return withGaps(rows.local(point), point);
  }

  @Override
  public Optional<Local> look(double[] point) {
    return rows.look(point).map(local -> withGaps(local, point));
  }

  private Local withGaps(Local local, double[] point) {
    double[] gradient = local.gradient();
    double[][] hessian = local.hessian();
    double value = local.value();
    for (double[] gap : gaps) {
      double[] term = expand(Vectors.dot(gap, point));
      value += term[0];
      FirthLikelihood.addOuter(gradient, hessian, gap, term[1], term[2]);
    }
    return new Local(value, gradient, hessian);
  }

  /** ln(1 - exp(-gap)) with its first and second derivative. */
  private static double[] expand(double gap) {
    double g = Math.max(gap, NARROWEST);
    double slope = 1 / Math.expm1(g);
    double bend = -slope * (1 + slope);
    double value = Math.log(Exponential.cdf(g));
    double below = gap - g;
    return new double[] {
      value + slope * below + 0.5 * bend * below * below, slope + bend * below, bend
    };
  }
}
