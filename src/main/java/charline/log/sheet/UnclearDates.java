package charline.log.sheet;

import charline.refusal.Missing;
import charline.refusal.Refusal;

/**
 * Dates in figures of a sheet of which nobody has said whether the day or the month comes first.
 */
final class UnclearDates {
  private String first = "";
  private String dayFirst = "";
  private String monthFirst = "";

  /** Takes a cell of dates in. */
  void look(int line, String cell) {
    if (!SheetTimes.isUnclear(cell)) {
      return;
    }
    String said = "%s in line %d".formatted(cell, line);
    if (first.isEmpty()) {
      first = said;
    }
    if (dayFirst.isEmpty() && SheetTimes.beginsWithDay(cell)) {
      dayFirst = said;
    }
    if (monthFirst.isEmpty() && SheetTimes.beginsWithMonth(cell)) {
      monthFirst = said;
    }
  }

  /** Refuses in one sentence where there is such a date. */
  void refuseIfAny(String sheet) {
    if (first.isEmpty()) {
      return;
    }
    if (!dayFirst.isEmpty() && !monthFirst.isEmpty()) {
      throw Refusal.data(
          "The dates of %s must all begin with the day or all with the month, and %s begins with the day, %s with the month; make them agree."
              .formatted(sheet, dayFirst, monthFirst));
    }
    throw Refusal.lacking(
        Missing.DATE_ORDER,
        "%s has dates such as %s, which may begin with the day or with the month%s; say which comes first."
            .formatted(sheet, first, hint()));
  }

  private String hint() {
    if (!dayFirst.isEmpty()) {
      return " (%s can only begin with the day)".formatted(dayFirst);
    }
    return monthFirst.isEmpty() ? "" : " (%s can only begin with the month)".formatted(monthFirst);
  }
}
