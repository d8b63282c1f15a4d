package charline.stat.metaanalysis;

import charline.stat.distribution.StandardNormal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * Quantities that are alike but not the same: estimates y with standard errors s of quantities θ,
 * each normal about a common mean m with standard deviation c t, where c says how distant a
 * quantity is. The mean has a normal prior and is integrated out exactly; the spread t has any
 * density and is integrated by the midpoint rule, so that its uncertainty is kept, which matters
 * where quantities are few (Gelman 2006, Bayesian Analysis 1:515-533; Schmidli et al. 2014,
 * Biometrics 70:1023-1032).
 *
 * @param priorMean mean of the prior of m
 * @param priorSd standard deviation of the prior of m, above 0
 * @param spreadDensity density of t on 0 to {@code widest}, up to a constant
 * @param widest largest t looked at, above 0
 */
public record RandomEffects(
    double priorMean, double priorSd, DoubleUnaryOperator spreadDensity, double widest) {
  private static final int CELLS = 2000;

  /** All cells together with weights as small do not show in a probability. */
  private static final double NEGLIGIBLE = 1e-9;

  /**
   * What follows for the mean, the spread, and a quantity of distance 1 not seen yet.
   *
   * @param mean posterior mean of m
   * @param meanSd its posterior standard deviation
   * @param spread posterior mean of t
   * @param spreadSd its posterior standard deviation
   * @param next predictive mean of a new quantity
   * @param nextSd its predictive standard deviation
   * @param predictive its predictive distribution
   */
  public record Result(
      double mean,
      double meanSd,
      double spread,
      double spreadSd,
      double next,
      double nextSd,
      NormalMixture predictive) {
    /** Widest first: where tails are heavy, it is the one that the others fall within. */
    private static final double[] MIDDLE_SHARES = {0.99, 0.95, 0.9, 0.8, 0.5};

    /**
     * Standard deviation of the narrowest normal about {@code next} that is at least as wide as the
     * predictive distribution in its standard deviation and its middle 50, 80, 90, 95 and 99 %.
     */
    public double coveringSd() {
      double sd = nextSd;
      for (double share : MIDDLE_SHARES) {
        double sds = StandardNormal.reachOfMiddle(share);
        if (predictive.within(next, sds * sd) < share) {
          sd = predictive.halfWidth(next, share, nextSd) / sds;
        }
      }
      return sd;
    }
  }

  /** A half-normal density of t with a given scale, cut off where it has all but ended. */
  public static RandomEffects halfNormal(double priorMean, double priorSd, double scale) {
    return new RandomEffects(
        priorMean, priorSd, t -> Math.exp(-t * t / (2 * scale * scale)), 5 * scale);
  }

  /**
   * Fits k quantities; with none, the prior speaks.
   *
   * @param estimates y, k
   * @param standardErrors s, k, above 0
   * @param distances c, k, above 0
   * @throws IllegalArgumentException if the three differ in length
   */
  public Result fit(double[] estimates, double[] standardErrors, double[] distances) {
    if (estimates.length != standardErrors.length || estimates.length != distances.length) {
      throw new IllegalArgumentException(
          "There must be one standard error and one distance per estimate, not %d and %d for %d."
              .formatted(standardErrors.length, distances.length, estimates.length));
    }
    double[] logWeight = new double[CELLS];
    double[] centre = new double[CELLS];
    double[] variance = new double[CELLS];
    double top = Double.NEGATIVE_INFINITY;
    for (int cell = 0; cell < CELLS; cell++) {
      double t = spread(cell);
      // Centred at the prior mean, so that nothing large cancels.
      double precision = 1 / (priorSd * priorSd);
      double pull = 0;
      double misfit = 0;
      double logs = 0;
      for (int i = 0; i < estimates.length; i++) {
        double away = distances[i] * t;
        double w = 1 / (standardErrors[i] * standardErrors[i] + away * away);
        double y = estimates[i] - priorMean;
        precision += w;
        pull += w * y;
        misfit += w * y * y;
        logs += Math.log(w);
      }
      centre[cell] = pull / precision;
      variance[cell] = 1 / precision;
      logWeight[cell] =
          Math.log(spreadDensity.applyAsDouble(t))
              + (logs - Math.log(precision) - misfit + pull * pull / precision) / 2;
      top = Math.max(top, logWeight[cell]);
    }
    return moments(logWeight, top, centre, variance);
  }

  private double spread(int cell) {
    return widest * (cell + 0.5) / CELLS;
  }

  private Result moments(double[] logWeight, double top, double[] centre, double[] variance) {
    double total = 0;
    double mean = 0;
    double meanSquare = 0;
    double spread = 0;
    double spreadSquare = 0;
    for (int cell = 0; cell < CELLS; cell++) {
      double w = Math.exp(logWeight[cell] - top);
      double t = spread(cell);
      total += w;
      mean += w * centre[cell];
      meanSquare += w * (centre[cell] * centre[cell] + variance[cell]);
      spread += w * t;
      spreadSquare += w * t * t;
    }
    mean /= total;
    double meanVariance = meanSquare / total - mean * mean;
    spread /= total;
    return new Result(
        priorMean + mean,
        Math.sqrt(meanVariance),
        spread,
        Math.sqrt(spreadSquare / total - spread * spread),
        priorMean + mean,
        Math.sqrt(meanVariance + spreadSquare / total),
        predictive(logWeight, top, centre, variance));
  }

  private NormalMixture predictive(
      double[] logWeight, double top, double[] centre, double[] variance) {
    List<NormalMixture.Part> parts = new ArrayList<>();
    for (int cell = 0; cell < CELLS; cell++) {
      double weight = Math.exp(logWeight[cell] - top);
      if (weight > NEGLIGIBLE) {
        double t = spread(cell);
        parts.add(
            new NormalMixture.Part(
                weight, priorMean + centre[cell], Math.sqrt(variance[cell] + t * t)));
      }
    }
    return new NormalMixture(parts);
  }
}
