package charline.stat.inverse;

/** The dose at a risk, or the reason why there is none. */
public sealed interface DoseOutcome permits Dose, DoseOutcome.NoDose {
  /**
   * The risk does not change along the column, so no dose belongs to a risk.
   *
   * @param message one sentence: what was found and what to do
   */
  record NoDose(String message) implements DoseOutcome {}
}
