package charline.model.check;

/** How much a finding weighs. */
public enum Severity {
  /** As the model expects. */
  FINE("fine"),
  /** Worth a look; the answer stands. */
  LOOK("look"),
  /** The answer must not be trusted. */
  FAILS("fails");

  private final String word;

  Severity(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }
}
