package charline.stat.mixed;

/**
 * The likelihood has no maximum, or none was reached.
 *
 * @param message one sentence: what was found and what to do
 */
public record NoRandomInterceptFit(String message) implements RandomInterceptOutcome {}
