package charline.cli.desk;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/** Reads days and moments as a person types them, in the zone of the desk. */
public final class When {
  private When() {}

  /**
   * A moment that is over: {@code 14:30} (today), {@code 2026-06-01 14:30}, {@code
   * 2026-06-01T14:30+02:00}, or a day, which stands for its noon, or for now if that is earlier.
   */
  public static OffsetDateTime past(String option, String text, OffsetDateTime now, ZoneId zone) {
    OffsetDateTime moment = moment(option, text, now, zone);
    if (moment.isAfter(now)) {
      throw Typed.refused(
          option,
          "what is recorded must have happened, and %s is still to come; it is %s %s now."
              .formatted(
                  text.strip(),
                  now.toLocalDate(),
                  now.toLocalTime().truncatedTo(ChronoUnit.MINUTES)));
    }
    return moment;
  }

  private static OffsetDateTime moment(
      String option, String text, OffsetDateTime now, ZoneId zone) {
    String iso = text.strip().replace(' ', 'T');
    try {
      if (iso.matches("\\d{1,2}:\\d{2}(:\\d{2})?")) {
        LocalTime time = LocalTime.parse(iso.length() % 3 == 1 ? "0" + iso : iso);
        return LocalDateTime.of(now.toLocalDate(), time).atZone(zone).toOffsetDateTime();
      }
      if (iso.matches(".+T.+([Zz]|[+-]\\d{2}:?\\d{2})")) {
        return OffsetDateTime.parse(iso);
      }
      return iso.contains("T")
          ? LocalDateTime.parse(iso).atZone(zone).toOffsetDateTime()
          : noon(day(option, text, now), now, zone);
    } catch (DateTimeException e) {
      throw refused(option, text);
    }
  }

  private static OffsetDateTime noon(LocalDate day, OffsetDateTime now, ZoneId zone) {
    OffsetDateTime noon = day.atTime(12, 0).atZone(zone).toOffsetDateTime();
    return noon.isAfter(now) && day.equals(now.toLocalDate()) ? now : noon;
  }

  /** A day: {@code 2026-06-01}, {@code today} or {@code yesterday}. */
  public static LocalDate day(String option, String text, OffsetDateTime now) {
    String word = text.strip().toLowerCase(Locale.ROOT);
    return switch (word) {
      case "today" -> now.toLocalDate();
      case "yesterday" -> now.toLocalDate().minusDays(1);
      default -> {
        try {
          yield LocalDate.parse(word);
        } catch (DateTimeException e) {
          throw refused(option, text);
        }
      }
    };
  }

  private static RuntimeException refused(String option, String text) {
    return Typed.refused(
        option,
        "a time must read like 14:30, 2026-06-01 or \"2026-06-01 14:30\", not \"%s\"."
            .formatted(text));
  }
}
