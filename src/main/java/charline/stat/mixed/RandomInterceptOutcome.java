package charline.stat.mixed;

/** What became of a random-intercept fit: numbers, or the reason why there are none. */
public sealed interface RandomInterceptOutcome
    permits RandomInterceptFit, RandomInterceptOutcome.NoRandomInterceptFit {
  /**
   * The likelihood has no maximum, or none was reached.
   *
   * @param message one sentence: what was found and what to do
   */
  record NoRandomInterceptFit(Cause cause, String message) implements RandomInterceptOutcome {
    /** What stands in the way. */
    public enum Cause {
      /** The covariates alone separate the outcomes. */
      SEPARATED,
      /** The likelihood grows with the standard deviation without end. */
      DEVIATION_UNBOUNDED,
      /** The search for a maximum failed. */
      NOT_CONVERGED
    }
  }
}
