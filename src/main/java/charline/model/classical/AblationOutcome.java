package charline.model.classical;

/** The ablation law of a stratum, or why there is none. */
public sealed interface AblationOutcome permits AblationFit, AblationOutcome.NoAblation {
  /**
   * No law.
   *
   * @param measured patches with a usable depth
   * @param reason one sentence: what was found and what to do
   */
  record NoAblation(int measured, String reason) implements AblationOutcome {}
}
