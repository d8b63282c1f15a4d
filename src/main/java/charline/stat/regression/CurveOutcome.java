package charline.stat.regression;

import java.util.List;

/** What became of fitting a curve: numbers, or the reason why there are none. */
public sealed interface CurveOutcome {

  /**
   * A curve that has converged.
   *
   * @param estimates one per parameter
   * @param standardErrors one per parameter, from the linear approximation at the estimates
   * @param residualSumOfSquares about the curve
   * @param degreesOfFreedom points less parameters, at least 1
   */
  record Fitted(
      List<Double> estimates,
      List<Double> standardErrors,
      double residualSumOfSquares,
      int degreesOfFreedom)
      implements CurveOutcome {
    public Fitted {
      estimates = List.copyOf(estimates);
      standardErrors = List.copyOf(standardErrors);
    }

    /** Standard deviation about the curve. */
    public double residualStandardDeviation() {
      return Math.sqrt(residualSumOfSquares / degreesOfFreedom);
    }
  }

  /**
   * No least-squares answer was reached.
   *
   * @param message one sentence: what failed and what to do
   */
  record Unfitted(String message) implements CurveOutcome {}
}
