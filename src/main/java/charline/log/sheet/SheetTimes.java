package charline.log.sheet;

import charline.refusal.Refusal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Dates and times of a sheet. */
final class SheetTimes {
  private static final Pattern FORM =
      Pattern.compile(
          "(\\d{4}-\\d\\d-\\d\\d)(?:[Tt"
              + " ]\\s*(\\d\\d:\\d\\d(?::\\d\\d(?:\\.\\d{1,9})?)?)\\s*([Zz]|[+-]\\d\\d:\\d\\d)?)?");

  private SheetTimes() {}

  /**
   * A moment from {@code 2026-09-14}, {@code 2026-09-14T10:30} or {@code 2026-09-14T10:30+02:00}; a
   * blank may stand for the T.
   *
   * @param zone of a time without an offset; a date without a time is its noon
   * @throws Refusal in one sentence
   */
  static OffsetDateTime parse(String text, ZoneId zone) {
    Matcher m = FORM.matcher(text);
    try {
      if (m.matches()) {
        LocalDate date = LocalDate.parse(m.group(1));
        LocalTime time = m.group(2) == null ? LocalTime.NOON : LocalTime.parse(m.group(2));
        if (m.group(3) != null) {
          return OffsetDateTime.parse(
              date + "T" + time + m.group(3).toUpperCase(java.util.Locale.ROOT));
        }
        return LocalDateTime.of(date, time).atZone(zone).toOffsetDateTime();
      }
    } catch (DateTimeException e) {
      // a thirteenth month and the like: refused below
    }
    throw Refusal.usage(
        "A time must read like 2026-09-14 or 2026-09-14T10:30+02:00, not \"%s\".".formatted(text));
  }

  /** The form that is written: to the second or finer, with the offset of entry. */
  static String text(OffsetDateTime moment) {
    return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(moment);
  }
}
