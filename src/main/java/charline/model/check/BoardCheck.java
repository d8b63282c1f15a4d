package charline.model.check;

import charline.model.Draw;
import charline.model.Estimate;
import charline.stat.distribution.StandardNormal;
import charline.stat.sampling.WeightedDraws;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * One board against the others.
 *
 * @param board its name
 * @param factor dose it takes over that of an average board
 * @param standsOff posterior chance that its shift lies further out than the prior expects, 19
 *     times in 20, of all of so many boards (Chaloner and Brant 1988, A Bayesian approach to
 *     outlier detection and residual analysis, Biometrika 75:651-659). The prior's spread is the
 *     measure, as a board far off widens the posterior's and hides behind it.
 */
public record BoardCheck(String board, Estimate factor, double standsOff) {
  private static final double NONE_FURTHER = 0.95;

  static List<BoardCheck> of(
      List<String> names, PatchPredictions replay, List<Draw> draws, double expectedSpread) {
    double limit = StandardNormal.reachOfMiddle(Math.pow(NONE_FURTHER, 1.0 / names.size()));
    double[] equal = new double[draws.size()];
    Arrays.fill(equal, 1.0 / equal.length);
    List<BoardCheck> checks = new ArrayList<>();
    for (int b = 0; b < names.size(); b++) {
      double[] mean = replay.boardMean(b);
      double[] spread = replay.boardSpread(b);
      double[] factor = new double[equal.length];
      double outside = 0;
      for (int s = 0; s < equal.length; s++) {
        double sd = Math.max(spread[s], 1e-9);
        double beyond = limit * expectedSpread / Math.max(draws.get(s).omega(), 1e-9);
        outside +=
            StandardNormal.below((-beyond - mean[s]) / sd)
                + StandardNormal.below((mean[s] - beyond) / sd);
        // A different quantile of the shift in each draw, in a fixed scattered order.
        double share = (s * 0.6180339887498949 + 0.5) % 1;
        double z = StandardNormal.quantile(Math.max(1e-6, Math.min(1 - 1e-6, share)));
        factor[s] = Math.exp(draws.get(s).omega() * (mean[s] + sd * z));
      }
      checks.add(
          new BoardCheck(
              names.get(b),
              new Estimate(
                  WeightedDraws.quantile(factor, equal, 0.5),
                  WeightedDraws.quantile(factor, equal, 0.05),
                  WeightedDraws.quantile(factor, equal, 0.95)),
              outside / equal.length));
    }
    return checks;
  }

  /** True if it must be said. */
  public boolean off() {
    return standsOff > FitChecks.STANDS_OFF;
  }
}
