package charline.model.classical;

/**
 * No law.
 *
 * @param measured patches with a usable depth
 * @param reason one sentence: what was found and what to do
 */
public record NoAblation(int measured, String reason) implements AblationOutcome {}
