package charline.paper;

/** Paper that a sheet is laid on. The sheet fits one page of each. */
public enum Paper {
  /** Whatever the printer holds: the browser's choice. */
  ANY("auto", 267),
  A4("A4 portrait", 285),
  LETTER("letter portrait", 267);

  private final String pageSize;
  private final int usableMillimetres;

  Paper(String pageSize, int usableMillimetres) {
    this.pageSize = pageSize;
    this.usableMillimetres = usableMillimetres;
  }

  /** Its size and margins as a style; a sheet fills the page. */
  public String style() {
    return "@page{size:%s;margin:6mm 10mm 6mm}@media print{.sheet{min-height:%dmm}}"
        .formatted(pageSize, usableMillimetres - 2);
  }

  /** Height between the sheet's margins, in mm; of the shorter paper where the paper is open. */
  public int usableMillimetres() {
    return usableMillimetres;
  }
}
