package charline.window;

/** How settled a window is. */
public enum Standing {
  /** More patches may still take the window away. */
  PROVISIONAL("provisional"),
  /** Settled, but without control patches on the very piece. */
  TO_CONFIRM("to confirm"),
  /** Enough control patches on the piece came out clean. */
  CONFIRMED("confirmed");

  private final String word;

  Standing(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }
}
