package charline.ask.time;

import charline.ask.time.Span.Return;
import charline.refusal.Refusal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.Year;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** Days, months and years by their dates: {@code 6th of october}, {@code 2026-03}, {@code may}. */
final class DatedDays {
  private static final List<String> MONTHS =
      List.of("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec");

  private static final Pattern MONTH =
      Pattern.compile(
          "jan(uary)?|feb(ruary)?|mar(ch)?|apr(il)?|may|june?|july?|aug(ust)?|sept?(ember)?|oct(ober)?|nov(ember)?|dec(ember)?");

  /** As people of other countries write them. */
  private static final Map<String, Integer> ELSEWHERE =
      Map.ofEntries(
          Map.entry("januar", 1),
          Map.entry("janvier", 1),
          Map.entry("februar", 2),
          Map.entry("fevrier", 2),
          Map.entry("février", 2),
          Map.entry("märz", 3),
          Map.entry("maerz", 3),
          Map.entry("avril", 4),
          Map.entry("mai", 5),
          Map.entry("juni", 6),
          Map.entry("juin", 6),
          Map.entry("juli", 7),
          Map.entry("juillet", 7),
          Map.entry("aout", 8),
          Map.entry("août", 8),
          Map.entry("septembre", 9),
          Map.entry("oktober", 10),
          Map.entry("octobre", 10),
          Map.entry("novembre", 11),
          Map.entry("dezember", 12),
          Map.entry("decembre", 12),
          Map.entry("décembre", 12));

  private static final Pattern DAY_OF_MONTH = Pattern.compile("(\\d{1,2})(?:st|nd|rd|th)?");

  private static final Pattern YEAR = Pattern.compile("(19|20)\\d\\d");

  private static final Pattern DATE =
      Pattern.compile("(\\d{4})[-/.](\\d{1,2})(?:[-/.](\\d{1,2}))?");

  private static final Pattern FIGURES =
      Pattern.compile("(\\d{1,2})[./-](\\d{1,2})(?:[./-](\\d{2}|\\d{4}))?[./]?");

  private final LocalDate today;

  DatedDays(LocalDate today) {
    this.today = today;
  }

  /** A day of the month alone: "23" or "the 23rd". */
  OptionalInt dayNumber(List<String> words, int at) {
    Matcher matcher = DAY_OF_MONTH.matcher(CalendarWords.word(words, at));
    return matcher.matches()
        ? OptionalInt.of(Integer.parseInt(matcher.group(1)))
        : OptionalInt.empty();
  }

  /** "2026-03-01", "6th of october 2026", "october 6", "25.10.2026". */
  Optional<Span> day(List<String> words, int at) {
    return date(CalendarWords.word(words, at))
        .or(() -> dayAndMonth(words, at))
        .or(() -> ordinalDay(words, at));
  }

  /** "the 23rd": the latest that has begun. */
  private Optional<Span> ordinalDay(List<String> words, int at) {
    String first = CalendarWords.word(words, at);
    if (!first.matches("\\d{1,2}(st|nd|rd|th)")
        || at == 0
        || !CalendarWords.word(words, at - 1).equals("the")
        || !CalendarWords.word(words, at + 1).isEmpty()
            && Set.of("pass", "passes", "patch").contains(CalendarWords.word(words, at + 1))) {
      return Optional.empty();
    }
    int number = Integer.parseInt(first.replaceAll("\\D", ""));
    return IntStream.range(0, 12)
        .mapToObj(back -> YearMonth.from(today).minusMonths(back))
        .filter(m -> m.isValidDay(number))
        .map(m -> m.atDay(number))
        .filter(d -> !d.isAfter(today))
        .findFirst()
        .map(d -> Span.day(1, d));
  }

  /** Without a year the latest that has begun. */
  private Optional<Span> dayAndMonth(List<String> words, int at) {
    boolean monthFirst = isMonth(CalendarWords.word(words, at));
    int the = monthFirst && CalendarWords.word(words, at + 1).equals("the") ? 1 : 0;
    boolean of = !monthFirst && CalendarWords.word(words, at + 1).equals("of");
    String day = CalendarWords.word(words, monthFirst ? at + 1 + the : at);
    String month = CalendarWords.word(words, monthFirst ? at : at + (of ? 2 : 1));
    if (!DAY_OF_MONTH.matcher(day).matches() || !isMonth(month)) {
      return Optional.empty();
    }
    int length = of ? 3 : 2 + the;
    String year = CalendarWords.word(words, at + length);
    boolean dated = YEAR.matcher(year).matches();
    int number = Integer.parseInt(day.replaceAll("\\D", ""));
    int all = dated ? length + 1 : length;
    return Optional.of(
        dayOf(
                number,
                monthNumber(month),
                dated ? OptionalInt.of(Integer.parseInt(year)) : OptionalInt.empty())
            .map(d -> Span.day(all, d).comingBack(dated ? Return.NEVER : Return.YEARLY))
            .orElseThrow(() -> notInTheCalendar(String.join(" ", words.subList(at, at + all)))));
  }

  /** A day of a month, of that year or the latest that has begun. */
  private Optional<LocalDate> dayOf(int number, int month, OptionalInt year) {
    // A leap day comes back after eight years at the latest.
    return IntStream.iterate(year.orElse(today.getYear()), y -> y - 1)
        .limit(year.isPresent() ? 1 : 9)
        .mapToObj(y -> YearMonth.of(y, month))
        .filter(m -> m.isValidDay(number))
        .map(m -> m.atDay(number))
        .filter(d -> year.isPresent() || !d.isAfter(today))
        .findFirst();
  }

  static boolean isMonth(String word) {
    return MONTH.matcher(word).matches() || ELSEWHERE.containsKey(word);
  }

  private static int monthNumber(String word) {
    Integer elsewhere = ELSEWHERE.get(word);
    return elsewhere == null ? MONTHS.indexOf(word.substring(0, 3)) + 1 : elsewhere;
  }

  private static Refusal notInTheCalendar(String typed) {
    return Refusal.usage(
        "\"%s\" is not a valid date; write a day as 2026-03-01 or 1 march 2026, or a month as 2026-03."
            .formatted(typed));
  }

  /** Refuses a day in figures, of which people read the month now first, now second. */
  static void requireOneReading(String word) {
    Matcher figures = FIGURES.matcher(word);
    if (figures.matches()) {
      throw Refusal.usage(
          "A date in figures must begin with the year, because others may swap day and month; write 2026-03-01 or 1 march 2026, not \"%s\"."
              .formatted(word));
    }
  }

  private static Optional<Span> date(String word) {
    Matcher matcher = DATE.matcher(word);
    try {
      if (matcher.matches()) {
        YearMonth month =
            YearMonth.of(Integer.parseInt(matcher.group(1)), Integer.parseInt(matcher.group(2)));
        return Optional.of(
            matcher.group(3) == null
                ? Span.days(1, month.atDay(1), month.plusMonths(1).atDay(1))
                : Span.day(1, month.atDay(Integer.parseInt(matcher.group(3)))));
      }
      return inFigures(word).map(day -> Span.day(1, day));
    } catch (DateTimeException e) {
      throw notInTheCalendar(word);
    }
  }

  /** A day in figures with its year, where day and month cannot be swapped. */
  private static Optional<LocalDate> inFigures(String word) {
    Matcher figures = FIGURES.matcher(word);
    if (!figures.matches() || figures.group(3) == null || figures.group(3).length() != 4) {
      return Optional.empty();
    }
    int a = Integer.parseInt(figures.group(1));
    int b = Integer.parseInt(figures.group(2));
    int year = Integer.parseInt(figures.group(3));
    if (a > 12 && b <= 12) {
      return Optional.of(LocalDate.of(year, b, a));
    }
    return b > 12 && a <= 12 || a == b ? Optional.of(LocalDate.of(year, a, b)) : Optional.empty();
  }

  /** Without a year, the latest such month that has begun. */
  Optional<Span> monthOrYear(List<String> words, int at) {
    String first = CalendarWords.word(words, at);
    if (YEAR.matcher(first).matches()) {
      Year year = Year.parse(first);
      return Optional.of(Span.days(1, year.atDay(1), year.plusYears(1).atDay(1)));
    }
    if (!isMonth(first)) {
      return Optional.empty();
    }
    int month = monthNumber(first);
    int of = CalendarWords.word(words, at + 1).equals("of") ? 1 : 0;
    String second = CalendarWords.word(words, at + 1 + of);
    boolean dated = YEAR.matcher(second).matches();
    boolean before = second.equals("last") && CalendarWords.word(words, at + 2 + of).equals("year");
    boolean running =
        second.equals("this") && CalendarWords.word(words, at + 2 + of).equals("year");
    int year =
        dated
            ? Integer.parseInt(second)
            : before
                ? today.getYear() - 1
                : running || month <= today.getMonthValue() ? today.getYear() : today.getYear() - 1;
    YearMonth named = YearMonth.of(year, month);
    int length = dated ? 2 + of : before || running ? 3 + of : 1;
    return Optional.of(
        Span.days(length, named.atDay(1), named.plusMonths(1).atDay(1))
            .comingBack(length == 1 ? Return.YEARLY : Return.NEVER));
  }
}
