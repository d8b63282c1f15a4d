package charline.stat.check;

import java.util.OptionalDouble;
import org.apache.commons.math3.stat.ranking.NaturalRanking;

/**
 * Risks beside 0/1 outcomes.
 *
 * @param deviance -2 log-likelihood of the outcomes under the risks; infinite where a risk of 0 or
 *     1 was wrong
 * @param pearson sum of (y - p)² / (p (1-p))
 * @param brier mean of (y - p)² (Brier 1950, Monthly Weather Review 78:1-3)
 * @param meanLogLoss deviance over twice the number of rows
 * @param areaUnderCurve chance that a row with the event had the higher risk, ties counted half
 *     (Hanley and McNeil 1982, Radiology 143:29-36); empty where all outcomes are alike
 * @param wrongAtHalf rows on the wrong side of a risk of 1/2
 */
public record RiskCheck(
    double deviance,
    double pearson,
    double brier,
    double meanLogLoss,
    OptionalDouble areaUnderCurve,
    int wrongAtHalf) {

  /**
   * Compares risks with outcomes.
   *
   * @param outcomes 0 or 1, at least one
   * @param risks as many, 0 to 1
   * @throws IllegalArgumentException if the lengths differ or a value is out of range
   */
  public static RiskCheck of(int[] outcomes, double[] risks) {
    requirePairs(outcomes, risks);
    double logLikelihood = 0;
    double pearson = 0;
    double squares = 0;
    int wrong = 0;
    for (int i = 0; i < risks.length; i++) {
      double p = risks[i];
      double residual = outcomes[i] - p;
      logLikelihood += outcomes[i] == 1 ? Math.log(p) : Math.log1p(-p);
      pearson += residual == 0 ? 0 : residual * residual / (p * (1 - p));
      squares += residual * residual;
      wrong += (p > 0.5) == (outcomes[i] == 1) ? 0 : 1;
    }
    return new RiskCheck(
        -2 * logLikelihood,
        pearson,
        squares / risks.length,
        -logLikelihood / risks.length,
        areaUnderCurve(outcomes, risks),
        wrong);
  }

  private static OptionalDouble areaUnderCurve(int[] outcomes, double[] risks) {
    double[] ranks = new NaturalRanking().rank(risks);
    double sum = 0;
    long events = 0;
    for (int i = 0; i < outcomes.length; i++) {
      if (outcomes[i] == 1) {
        sum += ranks[i];
        events++;
      }
    }
    long others = outcomes.length - events;
    return events == 0 || others == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of((sum - events * (events + 1) / 2.0) / ((double) events * others));
  }

  static void requirePairs(int[] outcomes, double[] risks) {
    if (outcomes.length != risks.length || risks.length == 0) {
      throw new IllegalArgumentException(
          "There must be one risk per outcome, and at least one: %d outcomes, but %d risks."
              .formatted(outcomes.length, risks.length));
    }
    for (int i = 0; i < risks.length; i++) {
      if (outcomes[i] != 0 && outcomes[i] != 1) {
        throw new IllegalArgumentException(
            "An outcome must be 0 or 1, not %d in row %d.".formatted(outcomes[i], i + 1));
      }
      if (!(risks[i] >= 0 && risks[i] <= 1)) {
        throw new IllegalArgumentException(
            "A risk must lie between 0 and 1, not %s in row %d.".formatted(risks[i], i + 1));
      }
    }
  }
}
