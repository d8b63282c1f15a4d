package charline.window;

/** What can be said of a stratum. */
public enum Verdict {
  /** A box holds. */
  WINDOW("window"),
  /** No box holds yet; more patches would settle it. */
  NOT_YET("not yet"),
  /** Most likely no setting clears without charring. */
  NONE("none"),
  /** The models do not fit these data. */
  UNRELIABLE("unreliable");

  private final String word;

  Verdict(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }
}
