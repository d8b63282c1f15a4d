package charline.log;

import static charline.log.Refused.Kind.USAGE;

import java.time.Clock;
import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.Year;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Times in plain words, by the calendar of the clock's zone: {@code last week}, {@code since
 * 2026-03-01}, {@code in march}. Weeks are those of ISO 8601, Monday to Sunday.
 */
final class TimePhrase {
  /**
   * A phrase that was understood.
   *
   * @param length how many words it took
   * @param since burned at or after
   * @param until burned before
   */
  record Found(int length, Optional<OffsetDateTime> since, Optional<OffsetDateTime> until) {}

  /** Whole days from the first, up to but without the last. */
  private record Days(int length, LocalDate from, LocalDate to) {}

  private static final Set<String> WITHIN = Set.of("in", "on", "during", "within");
  private static final Set<String> FROM = Set.of("since", "from");
  private static final Set<String> UP_TO = Set.of("until", "till", "to");
  private static final List<String> MONTHS =
      List.of("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec");
  private static final Pattern MONTH =
      Pattern.compile(
          "jan(uary)?|feb(ruary)?|mar(ch)?|apr(il)?|may|june?|july?|aug(ust)?|sept?(ember)?|oct(ober)?|nov(ember)?|dec(ember)?");
  private static final Pattern YEAR = Pattern.compile("(19|20)\\d\\d");
  private static final Pattern DATE = Pattern.compile("(\\d{4})-(\\d{1,2})(?:-(\\d{1,2}))?");

  private final LocalDate today;
  private final ZoneId zone;

  TimePhrase(Clock clock) {
    today = LocalDate.now(clock);
    zone = clock.getZone();
  }

  /** The phrase that starts at a word and cannot mean anything else. */
  Optional<Found> at(List<String> words, int start) {
    String first = words.get(start);
    if (WITHIN.contains(first)) {
      return days(words, start + 1).map(d -> between(d, 1));
    }
    if (FROM.contains(first)) {
      return days(words, start + 1)
          .map(d -> new Found(d.length() + 1, moment(d.from()), Optional.empty()));
    }
    if (UP_TO.contains(first)) {
      return days(words, start + 1)
          .map(d -> new Found(d.length() + 1, Optional.empty(), moment(d.to())));
    }
    if (first.equals("after")) {
      return days(words, start + 1)
          .map(d -> new Found(d.length() + 1, moment(d.to()), Optional.empty()));
    }
    if (first.equals("before")) {
      return days(words, start + 1)
          .map(d -> new Found(d.length() + 1, Optional.empty(), moment(d.from())));
    }
    return named(words, start).map(d -> between(d, 0));
  }

  /** A bare month or year, which may as well be somebody's name. */
  Optional<Found> bareAt(List<String> words, int start) {
    return monthOrYear(words, start).map(d -> between(d, 0));
  }

  /** True for a word that a time must follow. */
  static boolean needsTime(String word) {
    return word.equals("since")
        || word.equals("until")
        || word.equals("till")
        || word.equals("after")
        || word.equals("before");
  }

  private Found between(Days days, int more) {
    return new Found(days.length() + more, moment(days.from()), moment(days.to()));
  }

  private Optional<OffsetDateTime> moment(LocalDate day) {
    return Optional.of(day.atStartOfDay(zone).toOffsetDateTime());
  }

  private Optional<Days> days(List<String> words, int at) {
    return named(words, at).or(() -> monthOrYear(words, at));
  }

  private Optional<Days> named(List<String> words, int at) {
    String first = word(words, at);
    String second = word(words, at + 1);
    if (first.equals("today")) {
      return Optional.of(new Days(1, today, today.plusDays(1)));
    }
    if (first.equals("yesterday")) {
      return Optional.of(new Days(1, today.minusDays(1), today));
    }
    if (first.equals("this")) {
      return unit(second, 0);
    }
    if (first.equals("last") || first.equals("past")) {
      return second.matches("\\d{1,4}")
          ? back(Integer.parseInt(second), word(words, at + 2))
          : unit(second, 1);
    }
    return date(first);
  }

  /** The running week, month or year, or the one before. */
  private Optional<Days> unit(String unit, int back) {
    LocalDate monday = today.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    LocalDate first = today.withDayOfMonth(1);
    LocalDate newYear = today.withDayOfYear(1);
    return switch (unit) {
      case "week" ->
          Optional.of(new Days(2, monday.minusWeeks(back), monday.minusWeeks(back).plusWeeks(1)));
      case "month" ->
          Optional.of(new Days(2, first.minusMonths(back), first.minusMonths(back).plusMonths(1)));
      case "year" ->
          Optional.of(new Days(2, newYear.minusYears(back), newYear.minusYears(back).plusYears(1)));
      default -> Optional.empty();
    };
  }

  /** So many days, weeks, months or years before today, and today. */
  private Optional<Days> back(int count, String unit) {
    LocalDate from =
        switch (unit) {
          case "day", "days" -> today.minusDays(count);
          case "week", "weeks" -> today.minusWeeks(count);
          case "month", "months" -> today.minusMonths(count);
          case "year", "years" -> today.minusYears(count);
          default -> null;
        };
    return Optional.ofNullable(from).map(f -> new Days(3, f, today.plusDays(1)));
  }

  private static Optional<Days> date(String word) {
    Matcher matcher = DATE.matcher(word);
    if (!matcher.matches()) {
      return Optional.empty();
    }
    try {
      YearMonth month =
          YearMonth.of(Integer.parseInt(matcher.group(1)), Integer.parseInt(matcher.group(2)));
      if (matcher.group(3) == null) {
        return Optional.of(new Days(1, month.atDay(1), month.plusMonths(1).atDay(1)));
      }
      LocalDate day = month.atDay(Integer.parseInt(matcher.group(3)));
      return Optional.of(new Days(1, day, day.plusDays(1)));
    } catch (DateTimeException e) {
      throw new Refused(
          USAGE,
          "\"%s\" is not in the calendar; write a day as 2026-03-01 or a month as 2026-03."
              .formatted(word),
          e);
    }
  }

  private Optional<Days> monthOrYear(List<String> words, int at) {
    String first = word(words, at);
    if (YEAR.matcher(first).matches()) {
      Year year = Year.parse(first);
      return Optional.of(new Days(1, year.atDay(1), year.plusYears(1).atDay(1)));
    }
    if (!MONTH.matcher(first).matches()) {
      return Optional.empty();
    }
    int month = MONTHS.indexOf(first.substring(0, 3)) + 1;
    String second = word(words, at + 1);
    boolean dated = YEAR.matcher(second).matches();
    // Without a year, the latest such month that has begun.
    int year =
        dated
            ? Integer.parseInt(second)
            : month <= today.getMonthValue() ? today.getYear() : today.getYear() - 1;
    YearMonth named = YearMonth.of(year, month);
    return Optional.of(new Days(dated ? 2 : 1, named.atDay(1), named.plusMonths(1).atDay(1)));
  }

  private static String word(List<String> words, int at) {
    return at < words.size() ? words.get(at).toLowerCase(Locale.ROOT) : "";
  }
}
