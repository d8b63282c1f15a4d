package charline.log.search;

import charline.refusal.Refusal;
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
import java.util.stream.IntStream;

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
  private static final Pattern DAY_OF_MONTH = Pattern.compile("(\\d{1,2})(?:st|nd|rd|th)?");
  private static final Pattern FIGURES =
      Pattern.compile("\\d{1,2}[./]\\d{1,2}[./]?|\\d{1,2}[./-]\\d{1,2}[./-](\\d{2}|\\d{4})");
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

  /** The days that all these words name together. */
  Optional<NamedDays> whole(List<String> words) {
    return days(words, 0)
        .filter(d -> d.length() == words.size())
        .map(d -> new NamedDays(d.from(), d.to().minusDays(1)));
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
    if (first.equals("the") && isDayOfMonth(second)) {
      return named(words, at + 1).map(d -> new Days(d.length() + 1, d.from(), d.to()));
    }
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
    return date(first).or(() -> dayAndMonth(words, at));
  }

  /** "6 october", "6th of october 2026", "october 6"; without a year the latest that has begun. */
  private Optional<Days> dayAndMonth(List<String> words, int at) {
    boolean monthFirst = MONTH.matcher(word(words, at)).matches();
    boolean of = !monthFirst && word(words, at + 1).equals("of");
    String day = word(words, monthFirst ? at + 1 : at);
    String month = word(words, monthFirst ? at : at + (of ? 2 : 1));
    if (!isDayOfMonth(day) || !MONTH.matcher(month).matches()) {
      return Optional.empty();
    }
    int length = of ? 3 : 2;
    String year = word(words, at + length);
    boolean dated = YEAR.matcher(year).matches();
    int number = Integer.parseInt(day.replaceAll("\\D", ""));
    int ofYear = monthNumber(month);
    // A leap day comes back after eight years at the latest.
    return IntStream.iterate(dated ? Integer.parseInt(year) : today.getYear(), y -> y - 1)
        .limit(dated ? 1 : 9)
        .mapToObj(y -> YearMonth.of(y, ofYear))
        .filter(m -> m.isValidDay(number))
        .map(m -> m.atDay(number))
        .filter(d -> dated || !d.isAfter(today))
        .findFirst()
        .map(d -> Optional.of(new Days(dated ? length + 1 : length, d, d.plusDays(1))))
        .orElseThrow(
            () ->
                notInTheCalendar(
                    String.join(" ", words.subList(at, at + (dated ? length + 1 : length)))));
  }

  private static boolean isDayOfMonth(String word) {
    return DAY_OF_MONTH.matcher(word).matches();
  }

  private static int monthNumber(String word) {
    return MONTHS.indexOf(word.substring(0, 3)) + 1;
  }

  private static Refusal notInTheCalendar(String typed) {
    return Refusal.usage(
        "\"%s\" is not a valid date; write a day as 2026-03-01 or 1 march 2026, or a month as 2026-03."
            .formatted(typed));
  }

  /** Refuses a day in figures, of which people read the month now first, now second. */
  static void requireOneReading(String word) {
    if (FIGURES.matcher(word).matches()) {
      throw Refusal.usage(
          "A date in figures must begin with the year, because others may swap day and month; write 2026-03-01 or 1 march 2026, not \"%s\"."
              .formatted(word));
    }
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
      throw notInTheCalendar(word);
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
    int month = monthNumber(first);
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
