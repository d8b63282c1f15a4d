package charline.stat.inverse;

/**
 * The risk does not change along the column, so no dose belongs to a risk.
 *
 * @param message one sentence: what was found and what to do
 */
public record NoDose(String message) implements DoseOutcome {}
