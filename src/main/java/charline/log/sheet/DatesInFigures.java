package charline.log.sheet;

import charline.log.sheet.SheetManner.Dates;
import charline.refusal.Refusal;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Turns days such as 25.10.2026 or 10/25/2026 of a column into 2026-10-25. */
final class DatesInFigures {
  private static final Pattern DAY =
      Pattern.compile(
          "\\s*(\\d{1,2})([./-])(\\d{1,2})[./-](\\d{4})(?:[,T]?\\s*(\\d{1,2}:\\d\\d.*))?\\s*");

  private static final int MONTHS = 12;

  private DatesInFigures() {}

  /**
   * The cells with such days the year first; others as they are.
   *
   * @param name of the sheet, for messages
   * @throws Refusal if nothing tells which is the day
   */
  static List<String> yearFirst(String name, String heading, List<String> cells, Dates dates) {
    List<Matcher> days = cells.stream().map(DAY::matcher).filter(Matcher::matches).toList();
    if (days.isEmpty()) {
      return cells;
    }
    boolean dayFirst = isDayFirst(name, heading, days, dates);
    return cells.stream().map(cell -> yearFirst(cell, dayFirst)).toList();
  }

  private static boolean isDayFirst(String name, String heading, List<Matcher> days, Dates dates) {
    if (dates != Dates.ASK) {
      return dates == Dates.DAY_FIRST;
    }
    boolean day = days.stream().anyMatch(d -> Integer.parseInt(d.group(1)) > MONTHS);
    boolean month = days.stream().anyMatch(d -> Integer.parseInt(d.group(3)) > MONTHS);
    if (day == month) {
      throw Refusal.data(
          "Column %s of %s has days such as \"%s\", of which the day may come first or the month; say which."
              .formatted(heading, name, days.get(0).group().strip()));
    }
    return day;
  }

  private static String yearFirst(String cell, boolean dayFirst) {
    Matcher day = DAY.matcher(cell);
    if (!day.matches()) {
      return cell;
    }
    String time =
        day.group(5) == null
            ? ""
            : "T" + (day.group(5).indexOf(':') == 1 ? "0" : "") + day.group(5);
    return "%s-%s-%s%s"
        .formatted(
            day.group(4), two(day.group(dayFirst ? 3 : 1)), two(day.group(dayFirst ? 1 : 3)), time);
  }

  private static String two(String number) {
    return number.length() == 1 ? "0" + number : number;
  }
}
