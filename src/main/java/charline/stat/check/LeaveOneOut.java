package charline.stat.check;

import charline.stat.regression.BinomialFit;
import charline.stat.regression.BinomialRegression;
import charline.stat.regression.BinomialSample;
import charline.stat.regression.FitOutcome;
import charline.stat.regression.NotConverged;
import charline.stat.regression.Separated;

/**
 * Leave-one-out: the risk of each row from a fit to all the others (Stone 1974, JRSS B 36:111-147).
 * Every row costs a full refit; no shortcut is taken.
 */
public final class LeaveOneOut {
  private LeaveOneOut() {}

  /** What became of it. */
  public sealed interface Outcome permits Predicted, NotPossible {}

  /**
   * Every refit succeeded.
   *
   * @param risks one per row, predicted without it
   * @param check those risks beside the outcomes
   */
  public record Predicted(double[] risks, RiskCheck check) implements Outcome {
    public Predicted {
      risks = risks.clone();
    }

    @Override
    public double[] risks() {
      return risks.clone();
    }
  }

  /**
   * A refit had no answer.
   *
   * @param row the row left out, counted from 0
   * @param message one sentence: what was found and what to do
   */
  public record NotPossible(int row, String message) implements Outcome {}

  /**
   * Predicts every row from the others.
   *
   * @param method how to fit
   * @param sample one trial per row
   * @throws IllegalArgumentException if a row has more than one trial
   */
  public static Outcome of(BinomialRegression method, BinomialSample sample) {
    int rows = sample.rowCount();
    int[] outcomes = new int[rows];
    double[] risks = new double[rows];
    for (int i = 0; i < rows; i++) {
      if (sample.trials(i) != 1) {
        throw new IllegalArgumentException(
            "Leave-one-out needs one trial per row, not %d in row %d; write one row per trial."
                .formatted(sample.trials(i), i + 1));
      }
      outcomes[i] = sample.events(i);
    }
    for (int i = 0; i < rows; i++) {
      BinomialSample others;
      try {
        others = sample.without(i);
      } catch (IllegalArgumentException unsolvable) {
        return new NotPossible(
            i, "Without row %d there is no fit: %s".formatted(i + 1, unsolvable.getMessage()));
      }
      FitOutcome outcome = method.fit(others);
      if (outcome instanceof BinomialFit fit) {
        risks[i] = fit.riskAt(sample.design().row(i));
      } else {
        String why =
            outcome instanceof Separated separated
                ? separated.message()
                : ((NotConverged) outcome).message();
        return new NotPossible(i, "Without row %d there is no fit: %s".formatted(i + 1, why));
      }
    }
    return new Predicted(risks, RiskCheck.of(outcomes, risks));
  }
}
