package charline.log.sheet;

/**
 * How a trial sheet is to be read that was laid out by a person.
 *
 * @param others what becomes of columns that are not known
 * @param dates how dates in figures begin
 * @param own what headings of a person's own mean
 */
public record SheetManner(OtherColumns others, DateOrder dates, OwnHeadings own) {
  /** As charline writes sheets. */
  public static final SheetManner PLAIN =
      new SheetManner(OtherColumns.REFUSE, DateOrder.UNKNOWN, OwnHeadings.NONE);

  /** The same with dates in that order. */
  public SheetManner with(DateOrder order) {
    return new SheetManner(others, order, own);
  }
}
