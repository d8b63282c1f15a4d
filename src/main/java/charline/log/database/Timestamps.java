package charline.log.database;

import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;

/**
 * Times as the log keeps them: the instant in UTC as text of fixed width, so that text order is
 * time order, and the zone offset of entry beside it. Kept to the millisecond; what is finer is cut
 * off.
 */
public final class Timestamps {
  private static final String SHAPE = "0000-00-00T00:00:00.000Z";
  private static final String FIRST = "0000-01-01T00:00:00.000Z";
  private static final String LAST = "9999-12-31T23:59:59.999Z";

  private Timestamps() {}

  // By hand, as it is done for every row of a large log and a formatter takes long to start.

  public static String utc(OffsetDateTime moment) {
    OffsetDateTime utc = moment.withOffsetSameInstant(ZoneOffset.UTC);
    if (utc.getYear() < 0 || utc.getYear() > 9999) {
      return utc.toString(); // which the log refuses, as it has no room for such a year
    }
    StringBuilder text = new StringBuilder(SHAPE);
    put(text, 4, utc.getYear());
    put(text, 7, utc.getMonthValue());
    put(text, 10, utc.getDayOfMonth());
    put(text, 13, utc.getHour());
    put(text, 16, utc.getMinute());
    put(text, 19, utc.getSecond());
    put(text, 23, utc.getNano() / 1_000_000);
    return text.toString();
  }

  /** The bound of a search: one before or after all that a log has room for is drawn in. */
  public static String bound(OffsetDateTime moment) {
    int year = moment.withOffsetSameInstant(ZoneOffset.UTC).getYear();
    return year < 0 ? FIRST : year > 9999 ? LAST : utc(moment);
  }

  /** Writes a number over the zeros that end at a place. */
  private static void put(StringBuilder text, int end, int number) {
    String digits = Integer.toString(number);
    text.replace(end - digits.length(), end, digits);
  }

  public static String offset(OffsetDateTime moment) {
    return moment.getOffset().getId();
  }

  /**
   * @throws DateTimeException if either is no time
   */
  public static OffsetDateTime of(String utc, String offset) {
    if (utc.length() != SHAPE.length()) {
      throw new DateTimeException("\"" + utc + "\" is no time");
    }
    return OffsetDateTime.of(
            number(utc, 0, 4),
            number(utc, 5, 7),
            number(utc, 8, 10),
            number(utc, 11, 13),
            number(utc, 14, 16),
            number(utc, 17, 19),
            number(utc, 20, 23) * 1_000_000,
            ZoneOffset.UTC)
        .withOffsetSameInstant(ZoneOffset.of(offset));
  }

  private static int number(String text, int from, int to) {
    try {
      return Integer.parseInt(text, from, to, 10);
    } catch (NumberFormatException e) {
      throw new DateTimeException("\"" + text + "\" is no time", e);
    }
  }
}
