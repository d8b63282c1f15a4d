package charline.stat.regression;

/** What became of a binomial fit: numbers, or the reason why there are none. */
public sealed interface FitOutcome permits BinomialFit, Separated, FitOutcome.NotConverged {
  /**
   * The search for a maximum failed; there are no numbers to show.
   *
   * @param message one sentence: what failed and what to do
   */
  record NotConverged(String message) implements FitOutcome {}
}
