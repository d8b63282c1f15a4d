package charline.cli.command;

import charline.ask.time.NamedDays;
import charline.refusal.Refusal;
import charline.trial.ClockTime;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads days and moments as a person types them, in the zone of the desk. */
public final class TypedTime {
  private static final String DAY = "\\d{4}-\\d{2}-\\d{2}";
  private static final String CLOCK = "\\d{2}:\\d{2}(:\\d{2}(\\.\\d{1,9})?)?";
  private static final String ZONE = "([Zz]|[+-]\\d{2}:\\d{2})";
  private static final Pattern TIMED = Pattern.compile("(.+?)[\\sT]+(\\d{1,2}:\\d{2}(?::\\d{2})?)");
  private static final String DAYS = "2026-06-01, today or yesterday";
  private static final String TIMES = "14:30, yesterday, 2026-06-01 or \"2026-06-01 14:30\"";

  private TypedTime() {}

  /**
   * A moment that is over: {@code 14:30} or {@code 9:30} (today), {@code 2026-06-01 14:30}, {@code
   * 2026-06-01T14:30+02:00}, or a day, which stands for its noon, or for now if that is earlier.
   */
  public static OffsetDateTime past(String option, String text, OffsetDateTime now, ZoneId zone) {
    return past(option, text, now, zone, day -> noon(day, now, zone));
  }

  /** The same, but a day stands for its beginning, as what was found counts for all of it. */
  public static OffsetDateTime pastFrom(
      String option, String text, OffsetDateTime now, ZoneId zone) {
    return past(option, text, now, zone, day -> day.atStartOfDay(zone).toOffsetDateTime());
  }

  private static OffsetDateTime past(
      String option,
      String text,
      OffsetDateTime now,
      ZoneId zone,
      Function<LocalDate, OffsetDateTime> ofDay) {
    OffsetDateTime moment = moment(option, text, now, zone, ofDay);
    if (moment.isAfter(now)) {
      throw TypedValues.refused(
          option,
          "the time must not be in the future, and %s is; it is %s %s now."
              .formatted(
                  text.strip(),
                  now.toLocalDate(),
                  now.toLocalTime().truncatedTo(ChronoUnit.MINUTES)));
    }
    return moment;
  }

  private static OffsetDateTime moment(
      String option,
      String text,
      OffsetDateTime now,
      ZoneId zone,
      Function<LocalDate, OffsetDateTime> ofDay) {
    String iso = text.strip().replaceAll("\\s+", "T").replaceFirst("(?<![\\d:])(?=\\d:)", "0");
    try {
      if (iso.matches(CLOCK)) {
        LocalTime time = LocalTime.parse(iso);
        return shown(option, LocalDateTime.of(now.toLocalDate(), time), zone);
      }
      if (iso.matches(DAY + "T" + CLOCK + ZONE)) {
        return OffsetDateTime.parse(iso);
      }
      if (iso.matches(DAY + "T" + CLOCK)) {
        return shown(option, LocalDateTime.parse(iso), zone);
      }
      Matcher timed = TIMED.matcher(text.strip());
      if (timed.matches() && !timed.group(1).isBlank()) {
        LocalTime time = LocalTime.parse(timed.group(2).replaceFirst("^(?=\\d:)", "0"));
        return shown(
            option, oneDay(option, timed.group(1), "a time", TIMES, now).atTime(time), zone);
      }
      return ofDay.apply(oneDay(option, text, "a time", TIMES, now));
    } catch (DateTimeException e) {
      throw TypedValues.refused(
          option,
          "\"%s\" is not a valid date and time; write a time like %s.".formatted(text, TIMES));
    }
  }

  private static OffsetDateTime shown(String option, LocalDateTime time, ZoneId zone) {
    ClockTime.trouble(time, zone)
        .ifPresent(
            trouble -> {
              throw TypedValues.refused(option, trouble);
            });
    return time.atZone(zone).toOffsetDateTime();
  }

  /** True if a text names a day without a time of day. */
  public static boolean isDay(String text) {
    return !text.contains(":");
  }

  private static OffsetDateTime noon(LocalDate day, OffsetDateTime now, ZoneId zone) {
    OffsetDateTime noon = day.atTime(12, 0).atZone(zone).toOffsetDateTime();
    return noon.isAfter(now) && day.equals(now.toLocalDate()) ? now : noon;
  }

  /**
   * The days that a text names as a question may name them: {@code 2026-06-01}, {@code yesterday},
   * {@code 1 june}, {@code last month}.
   */
  public static NamedDays days(String option, String text, OffsetDateTime now) {
    try {
      return named(option, text, "a day", DAYS, now);
    } catch (DateTimeException e) {
      throw TypedValues.refused(
          option, "\"%s\" is not a valid date; write a day like %s.".formatted(text.strip(), DAYS));
    }
  }

  /** A single day, named likewise. */
  public static LocalDate day(String option, String text, OffsetDateTime now) {
    try {
      return oneDay(option, text, "a day", DAYS, now);
    } catch (DateTimeException e) {
      throw TypedValues.refused(
          option, "\"%s\" is not a valid date; write a day like %s.".formatted(text.strip(), DAYS));
    }
  }

  private static LocalDate oneDay(
      String option, String text, String what, String forms, OffsetDateTime now) {
    NamedDays days = named(option, text, what, forms, now);
    if (!days.first().equals(days.last())) {
      throw TypedValues.refused(
          option,
          "\"%s\" is several days; name one, such as %s.".formatted(text.strip(), days.first()));
    }
    return days.first();
  }

  private static NamedDays named(
      String option, String text, String what, String forms, OffsetDateTime now) {
    Optional<LocalDate> plain = day(text.strip(), now);
    if (plain.isPresent()) {
      return new NamedDays(plain.get(), plain.get());
    }
    try {
      return NamedDays.read(text, Clock.fixed(now.toInstant(), now.getOffset()))
          .orElseThrow(() -> unread(option, what, forms, text));
    } catch (Refusal e) {
      throw e.getMessage().startsWith(option) ? e : TypedValues.refused(option, e.getMessage());
    }
  }

  /**
   * The day, empty where the text does not read like one.
   *
   * @throws DateTimeException if it does and the calendar has no such day
   */
  private static Optional<LocalDate> day(String text, OffsetDateTime now) {
    return switch (text.toLowerCase(Locale.ROOT)) {
      case "today" -> Optional.of(now.toLocalDate());
      case "yesterday" -> Optional.of(now.toLocalDate().minusDays(1));
      default -> text.matches(DAY) ? Optional.of(LocalDate.parse(text)) : Optional.empty();
    };
  }

  private static Refusal unread(String option, String what, String forms, String text) {
    return TypedValues.refused(
        option, "%s must read like %s, not \"%s\".".formatted(what, forms, text));
  }
}
