package charline.log.sheet;

import charline.refusal.Missing;
import charline.refusal.Refusal;
import charline.trial.ClockTime;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.Month;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Dates and times of a sheet. */
final class SheetTimes {
  /** A date, and the time of day and the zone where they are given. */
  private static final Pattern MOMENT =
      Pattern.compile(
          "(.+?)(?:(?:[Tt]|,?\\s+)(\\d{1,2}:\\d\\d(?::\\d\\d(?:\\.\\d{1,9})?)?)"
              + "\\s*([AaPp]\\.?[Mm]\\.?)?\\s*([Zz]|[+-]\\d\\d:\\d\\d)?)?");

  private static final Pattern YEAR_FIRST =
      Pattern.compile("(\\d{4})(?:-(\\d\\d)-(\\d\\d)|[/.](\\d{1,2})[/.](\\d{1,2}))");

  private static final Pattern FIGURES =
      Pattern.compile("(\\d{1,2})[-/.]\\s?(\\d{1,2})[-/.]\\s?(\\d{4}|\\d\\d)");

  private static final Pattern DAY_AND_NAME =
      Pattern.compile("(\\d{1,2})\\.?[\\s-]+(\\p{L}{3,9})\\.?,?[\\s-]+(\\d{4})");
  private static final Pattern NAME_AND_DAY =
      Pattern.compile("(\\p{L}{3,9})\\.?\\s+(\\d{1,2}),?\\s+(\\d{4})");

  private static final int CENTURY = 2000;
  private static final int MONTHS = 12;

  private SheetTimes() {}

  /**
   * A moment from {@code 2026-09-14}, {@code 2026-09-14T10:30} or {@code 2026-09-14T10:30+02:00}; a
   * blank may stand for the T. Where the order is known, {@code 14/09/2026} and {@code 14.9.26}
   * will do, and {@code 14 Sep 2026} at any time.
   *
   * @param zone of a time without an offset; a date without a time is its noon
   * @throws Refusal in one sentence, also of a time that clocks of the zone left out or showed
   *     twice
   */
  static OffsetDateTime parse(String text, ZoneId zone, DateOrder order) {
    return parse(text, zone, order, LocalTime.NOON);
  }

  /** The same for what counts from then on: a date without a time is the beginning of that day. */
  static OffsetDateTime parseFrom(String text, ZoneId zone, DateOrder order) {
    return parse(text, zone, order, LocalTime.MIDNIGHT);
  }

  private static OffsetDateTime parse(
      String text, ZoneId zone, DateOrder order, LocalTime without) {
    Matcher m = MOMENT.matcher(text.strip());
    try {
      if (m.matches()) {
        Optional<LocalDate> date = date(m.group(1), order);
        if (date.isPresent()) {
          LocalTime time = m.group(2) == null ? without : time(m.group(2), m.group(3));
          return m.group(4) == null
              ? shown(date.get().atTime(time), zone)
              : OffsetDateTime.parse(date.get() + "T" + time + m.group(4).toUpperCase(Locale.ROOT));
        }
      }
    } catch (DateTimeException e) {
      // a thirteenth month and the like: refused below
    }
    if (order != DateOrder.UNKNOWN && isUnclear(text)) {
      throw Refusal.usage(
          "\"%s\" is no date with the %s first."
              .formatted(text, order == DateOrder.DAY_FIRST ? "day" : "month"));
    }
    throw Refusal.usage(
        "A time must read like 2026-09-14 or 2026-09-14T10:30+02:00, not \"%s\".".formatted(text));
  }

  private static OffsetDateTime shown(LocalDateTime time, ZoneId zone) {
    ClockTime.trouble(time, zone)
        .ifPresent(
            trouble -> {
              throw Refusal.usage(Character.toUpperCase(trouble.charAt(0)) + trouble.substring(1));
            });
    return time.atZone(zone).toOffsetDateTime();
  }

  /** A day alone, likewise. */
  static LocalDate day(String text, DateOrder order) {
    try {
      Optional<LocalDate> date = date(text.strip(), order);
      if (date.isPresent()) {
        return date.get();
      }
    } catch (DateTimeException e) {
      // refused below
    }
    throw Refusal.usage("A day must read like 2026-05-04.");
  }

  private static Optional<LocalDate> date(String text, DateOrder order) {
    Matcher m = YEAR_FIRST.matcher(text);
    if (m.matches()) {
      boolean dashes = m.group(2) != null;
      return Optional.of(of(m.group(1), m.group(dashes ? 2 : 4), m.group(dashes ? 3 : 5)));
    }
    m = DAY_AND_NAME.matcher(text);
    if (m.matches() && month(m.group(2)) > 0) {
      return Optional.of(LocalDate.of(number(m.group(3)), month(m.group(2)), number(m.group(1))));
    }
    m = NAME_AND_DAY.matcher(text);
    if (m.matches() && month(m.group(1)) > 0) {
      return Optional.of(LocalDate.of(number(m.group(3)), month(m.group(1)), number(m.group(2))));
    }
    m = FIGURES.matcher(text);
    if (!m.matches()) {
      return Optional.empty();
    }
    return switch (order) {
      case DAY_FIRST -> Optional.of(of(m.group(3), m.group(2), m.group(1)));
      case MONTH_FIRST -> Optional.of(of(m.group(3), m.group(1), m.group(2)));
      case UNKNOWN ->
          throw Refusal.lacking(
              Missing.DATE_ORDER,
              "\"%s\" may begin with the day or with the month; say which comes first."
                  .formatted(text));
    };
  }

  private static LocalDate of(String year, String month, String day) {
    int y = number(year);
    return LocalDate.of(year.length() == 2 ? CENTURY + y : y, number(month), number(day));
  }

  private static int number(String figures) {
    return Integer.parseInt(figures);
  }

  /** The number of a month by its English name or the first three letters of it, 0 for none. */
  private static int month(String name) {
    String word = name.toUpperCase(Locale.ROOT);
    for (Month month : Month.values()) {
      if (month.name().equals(word)
          || month.name().substring(0, 3).equals(word)
          || month == Month.SEPTEMBER && word.equals("SEPT")) {
        return month.getValue();
      }
    }
    return 0;
  }

  private static LocalTime time(String clock, String half) {
    LocalTime time = LocalTime.parse(clock.indexOf(':') == 1 ? "0" + clock : clock);
    if (half == null) {
      return time;
    }
    if (time.getHour() == 0 || time.getHour() > MONTHS) {
      throw new DateTimeException("no hour of half a day");
    }
    boolean after = half.toLowerCase(Locale.ROOT).startsWith("p");
    return time.withHour(time.getHour() % MONTHS + (after ? MONTHS : 0));
  }

  /** True if a text is a date in figures, whose day and month the order alone tells apart. */
  static boolean isUnclear(String text) {
    return figures(text).isPresent();
  }

  /** True if the first number of such a date is too large for a month. */
  static boolean beginsWithDay(String text) {
    return figures(text).filter(m -> number(m.group(1)) > MONTHS).isPresent();
  }

  /** True if its second number is. */
  static boolean beginsWithMonth(String text) {
    return figures(text).filter(m -> number(m.group(2)) > MONTHS).isPresent();
  }

  private static Optional<Matcher> figures(String text) {
    Matcher moment = MOMENT.matcher(text.strip());
    return moment.matches()
        ? Optional.of(FIGURES.matcher(moment.group(1))).filter(Matcher::matches)
        : Optional.empty();
  }

  /** The form that is written: to the second or finer, with the offset of entry. */
  static String text(OffsetDateTime moment) {
    return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(moment);
  }
}
