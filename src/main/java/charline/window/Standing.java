package charline.window;

/**
 * How settled a window is. A window without one is as settled as trials on other boards make it.
 */
public enum Standing {
  /** More patches may still take the window away. */
  PROVISIONAL("provisional");

  private final String word;

  Standing(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }
}
