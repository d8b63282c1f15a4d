package charline.stat.mixed;

/**
 * The likelihood has no maximum, or none was reached.
 *
 * @param message one sentence: what was found and what to do
 */
public record NoRandomInterceptFit(Cause cause, String message) implements RandomInterceptOutcome {
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
