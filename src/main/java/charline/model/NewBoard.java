package charline.model;

import charline.stat.distribution.Logistic;
import charline.stat.quadrature.NormalTrapezoid;
import java.util.Arrays;
import java.util.OptionalDouble;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/** A board not seen yet: its shift is normal with mean 0 and standard deviation ω. */
final class NewBoard implements BoardShift {
  /** A normal of variance 8 / pi looks like the logistic; only a start hangs on it. */
  private static final double NORMAL_FOR_LOGISTIC = Math.PI / 8;

  private static final int NEWTON_STEPS = 12;

  /** Steps shrink to their square, so what is left after one of this size is rounding. */
  private static final double NEWTON_ACCURACY = 1e-6;

  private static final double OUT_OF_RANGE = Math.exp(CAP);

  private final double[] omega;
  private final double[] sigma;
  private final double[] psi;

  /**
   * The rule over the board's shift, draw by draw: as fine as a single patch needs it where boards
   * are so much more unlike than patches.
   */
  private NormalTrapezoid[] rules;

  /**
   * exp(ω x / σ) at each node x on one side of the middle one, draw by draw, the widest first: the
   * same for every setting. The other side mirrors them.
   */
  private volatile double[][] wingOdds;

  /**
   * @param omega spread between boards, one per draw
   * @param sigma spread of a single patch, one per draw
   * @param psi weight of ln passes, one per draw
   */
  NewBoard(double[] omega, double[] sigma, double[] psi) {
    this.omega = omega;
    this.sigma = sigma;
    this.psi = psi;
  }

  /** Made when the first chance is asked for: draws that are only kept and read have no need. */
  private double[][] wings() {
    if (wingOdds == null) {
      makeWings();
    }
    return wingOdds;
  }

  private synchronized void makeWings() {
    if (wingOdds != null) {
      return;
    }
    NormalTrapezoid[] every = new NormalTrapezoid[omega.length];
    Arrays.setAll(every, i -> NormalTrapezoid.forLogistic(1, omega[i] / sigma[i]));
    double[][] wings = new double[omega.length][];
    for (int i = 0; i < wings.length; i++) {
      double[] rising = every[i].exponentials(omega[i] / sigma[i], CAP);
      wings[i] = new double[rising.length / 2];
      Arrays.setAll(wings[i], k -> rising[rising.length - 1 - k]);
    }
    rules = every;
    wingOdds = wings;
  }

  @Override
  public BoardShift chosen(int[] draws) {
    return new NewBoard(chosen(omega, draws), chosen(sigma, draws), chosen(psi, draws));
  }

  private static double[] chosen(double[] values, int[] draws) {
    return Arrays.stream(draws).mapToDouble(d -> values[d]).toArray();
  }

  @Override
  public double chance(int draw, double margin, double seamShare) {
    double[] wing = wings()[draw];
    return seamShare == 0
        ? chance(draw, margin, wing)
        : seam(draw, seamShare).mean(margin, omega[draw], rules[draw], wing).chance();
  }

  private Seam seam(int draw, double share) {
    return new Seam(share, psi[draw], sigma[draw]);
  }

  /** One exponential, as the nodes' own are kept. */
  private double chance(int draw, double margin, double[] wing) {
    NormalTrapezoid rule = rules[draw];
    if (wing[0] >= OUT_OF_RANGE) {
      return chanceOfSteps(draw, margin);
    }
    double odds = BoardShift.cappedExp(-margin / sigma[draw]);
    double sum = rule.weight(wing.length) / (1 + odds);
    for (int k = 0; k < wing.length; k++) {
      sum += rule.weight(k) * (1 / (1 + odds * wing[k]) + 1 / (1 + odds / wing[k]));
    }
    return sum;
  }

  /** The same where patches hardly differ and boards do: every node is a step. */
  private double chanceOfSteps(int draw, double margin) {
    NormalTrapezoid rule = rules[draw];
    double sum = 0;
    for (int q = 0; q < rule.points(); q++) {
      sum += rule.weight(q) * Logistic.cdf((margin - omega[draw] * rule.node(q)) / sigma[draw]);
    }
    return sum;
  }

  @Override
  public double margin(int draw, double chance, double seamShare) {
    return byNewton(draw, chance, seamShare)
        .orElseGet(
            () -> {
              // Where neither boards nor patches differ, the chance is a step: just beside it.
              double reach =
                  NEWTON_ACCURACY
                      + 8 * omega[draw]
                      + sigma[draw] * (Math.abs(Logistic.quantile(chance)) + 1);
              double seam = seamShare == 0 ? 0 : psi[draw] * Math.log(2);
              // keeps state, so one for each call
              return new BrentSolver(1e-10, 1e-9)
                  .solve(200, m -> chance(draw, m, seamShare) - chance, -reach - seam, reach);
            });
  }

  /** The margin with a chance; its log odds are all but straight, so few steps are needed. */
  private OptionalDouble byNewton(int draw, double chance, double seamShare) {
    double[] wing = wings()[draw];
    NormalTrapezoid rule = rules[draw];
    double target = Logistic.quantile(chance);
    double spread = omega[draw] / sigma[draw];
    double margin = target * sigma[draw] * Math.sqrt(1 + NORMAL_FOR_LOGISTIC * spread * spread);
    for (int step = 0; step < NEWTON_STEPS; step++) {
      if (wing[0] >= OUT_OF_RANGE) {
        return OptionalDouble.empty();
      }
      Seam.Mean now =
          seamShare == 0
              ? single(draw, margin)
              : seam(draw, seamShare).mean(margin, omega[draw], rule, wing);
      double sum = now.chance();
      double slope = now.slope();
      double move = sigma[draw] * (Logistic.quantile(sum) - target) * sum * (1 - sum) / slope;
      if (!(Math.abs(move) < Double.MAX_VALUE)) {
        return OptionalDouble.empty();
      }
      margin -= move;
      if (Math.abs(move) < NEWTON_ACCURACY) {
        return OptionalDouble.of(margin);
      }
    }
    return OptionalDouble.empty();
  }

  /** The chance with its slope against margin / σ, where nothing gets twice the passes. */
  private Seam.Mean single(int draw, double margin) {
    double[] wing = wings()[draw];
    NormalTrapezoid rule = rules[draw];
    double odds = BoardShift.cappedExp(-margin / sigma[draw]);
    double each = 1 / (1 + odds);
    double sum = rule.weight(wing.length) * each;
    double slope = rule.weight(wing.length) * each * (1 - each);
    for (int k = 0; k < wing.length; k++) {
      double up = 1 / (1 + odds * wing[k]);
      double down = 1 / (1 + odds / wing[k]);
      sum += rule.weight(k) * (up + down);
      slope += rule.weight(k) * (up * (1 - up) + down * (1 - down));
    }
    return new Seam.Mean(sum, slope);
  }
}
