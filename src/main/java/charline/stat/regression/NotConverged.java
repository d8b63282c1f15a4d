package charline.stat.regression;

/**
 * The search for a maximum failed; there are no numbers to show.
 *
 * @param message one sentence: what failed and what to do
 */
public record NotConverged(String message) implements FitOutcome {}
