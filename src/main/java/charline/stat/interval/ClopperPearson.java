package charline.stat.interval;

import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.special.Beta;

/**
 * Exact bounds on a risk from events out of trials (Clopper and Pearson 1934, Biometrika
 * 26:404-413). They hold with at least the confidence asked for, whatever the risk. Accurate to
 * 1e-12.
 *
 * @param events 0 to {@code trials}
 * @param trials at least 1
 */
public record ClopperPearson(int events, int trials) {
  public ClopperPearson {
    if (trials < 1) {
      throw new IllegalArgumentException("Trials must be 1 or more, not " + trials + ".");
    }
    if (events < 0 || events > trials) {
      throw new IllegalArgumentException(
          "Events must be between 0 and the %d trials, not %d.".formatted(trials, events));
    }
  }

  /** Bounds with half of what confidence leaves on each side, also where no or all had events. */
  public Interval twoSided(double confidence) {
    Interval.requireConfidence(confidence);
    double each = 0.5 + confidence / 2;
    return Interval.of(atLeast(each), atMost(each), confidence);
  }

  /** One-sided: the risk is at most this. */
  public double atMost(double confidence) {
    Interval.requireConfidence(confidence);
    return events == trials ? 1 : betaQuantile(confidence, events + 1, trials - events);
  }

  /** One-sided: the risk is at least this. */
  public double atLeast(double confidence) {
    Interval.requireConfidence(confidence);
    return events == 0 ? 0 : betaQuantile(1 - confidence, events, trials - events + 1);
  }

  /**
   * How many trials in a row without an event show that the risk is at most a limit: the smallest n
   * with {@code (1 - limit)^n <= 1 - confidence}. For 5 % at 95 %, 59.
   *
   * @param limit between 0 and 1
   * @param confidence one-sided, between 0 and 1
   */
  public static int trialsWithoutEvent(double limit, double confidence) {
    if (!(limit > 0 && limit < 1)) {
      throw new IllegalArgumentException(
          "Limit must lie between 0 and 1, not " + limit + "; write 0.05 for 5 %.");
    }
    Interval.requireConfidence(confidence);
    double exact = Math.log1p(-confidence) / Math.log1p(-limit);
    if (exact > Integer.MAX_VALUE) {
      throw new IllegalArgumentException(
          "Limit must be reachable with at most %d trials, not %s; choose a larger one."
              .formatted(Integer.MAX_VALUE, limit));
    }
    return (int) Math.ceil(exact * (1 - 1e-13)); // a whole number must not be rounded up
  }

  private static double betaQuantile(double share, double a, double b) {
    return new BrentSolver(1e-15, 1e-15, 1e-15)
        .solve(1000, x -> Beta.regularizedBeta(x, a, b) - share, 0, 1);
  }
}
