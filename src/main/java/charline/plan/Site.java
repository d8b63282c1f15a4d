package charline.plan;

/** Where patches are to be burned. */
public enum Site {
  /** Wood that may char. */
  OFFCUT("offcut"),
  /** The client's piece, where nothing is burned whose char risk may exceed the asked one. */
  PIECE("piece"),
  /** A place of the client's piece that will not be seen and may char. */
  HIDDEN("hidden place of the piece");

  private final String word;

  Site(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }
}
