package charline.log.sheet;

import charline.refusal.Refusal;

/** Whether a date in figures, such as 03/09/2026, begins with the day or with the month. */
public enum DateOrder {
  /** Nobody has said: such a date is refused. */
  UNKNOWN(""),
  DAY_FIRST("day-first"),
  MONTH_FIRST("month-first");

  private final String word;

  DateOrder(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }

  /** The order of that name; "day" and "month" will do. */
  public static DateOrder ofWord(String typed) {
    return switch (typed.strip().toLowerCase(java.util.Locale.ROOT)) {
      case "day-first", "day first", "day" -> DAY_FIRST;
      case "month-first", "month first", "month" -> MONTH_FIRST;
      default ->
          throw Refusal.usage(
              "Dates must be day-first or month-first, not \"%s\".".formatted(typed.strip()));
    };
  }
}
