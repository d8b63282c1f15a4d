package charline.sheet;

/** Paper that a sheet is laid on. The sheet fits one page of each. */
public enum Paper {
  /** Whatever the printer holds: the browser's choice. */
  ANY("auto"),
  A4("A4 portrait"),
  LETTER("letter portrait");

  private final String pageSize;

  Paper(String pageSize) {
    this.pageSize = pageSize;
  }

  /** Value of the page-size property. */
  public String pageSize() {
    return pageSize;
  }
}
