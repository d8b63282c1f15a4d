package charline.ask.time;

import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.Year;
import java.time.temporal.ChronoUnit;
import java.time.temporal.IsoFields;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** Names of single stretches of time, by the calendar of a clock's zone. */
final class CalendarWords {

  static final Set<String> LAST = Set.of("last", "previous", "prior");
  private static final Set<String> PAST = Set.of("past", "preceding");
  static final Set<String> THIS = Set.of("this", "current", "the");
  private static final Set<String> EARLY = Set.of("early", "beginning", "start");
  private static final Set<String> MIDDLE = Set.of("mid", "middle");
  private static final Set<String> LATE = Set.of("late", "end");
  private static final int FEW = 3;

  private final LocalDateTime now;
  private final LocalDate today;
  private final DatedDays dated;
  private final Weekdays weekdays;

  CalendarWords(Clock clock) {
    now = LocalDateTime.now(clock);
    today = now.toLocalDate();
    dated = new DatedDays(today);
    weekdays = new Weekdays(today, dated);
  }

  /** A stretch whose name cannot mean anything else. */
  Optional<Span> named(List<String> words, int at) {
    String first = word(words, at);
    if (first.equals("the")) {
      return named(words, at + 1).map(s -> s.longer(1));
    }
    return relative(words, at)
        .or(() -> partOf(words, at))
        .or(() -> weekOf(words, at))
        .or(() -> weekdays.day(words, at))
        .or(() -> dated.day(words, at).map(span -> DayParts.withPart(words, at, span)))
        .or(() -> ago(words, at));
  }

  /** The same, or a bare month or year, which may as well be a name. */
  Optional<Span> any(List<String> words, int at) {
    return named(words, at)
        .or(() -> dated.monthOrYear(words, at))
        .or(() -> DayParts.clockTime(words, at, today));
  }

  private Optional<Span> relative(List<String> words, int at) {
    String first = word(words, at);
    String second = word(words, at + 1);
    if (first.equals("today") || first.equals("now")) {
      return Optional.of(DayParts.withPart(words, at, Span.day(1, today)));
    }
    if (first.equals("yesterday")) {
      return Optional.of(DayParts.withPart(words, at, Span.day(1, today.minusDays(1))));
    }
    if (first.equals("day") && second.equals("before") && word(words, at + 2).equals("yesterday")) {
      return Optional.of(DayParts.withPart(words, at, Span.day(3, today.minusDays(2))));
    }
    if (first.equals("tonight")) {
      return Optional.of(
          Span.of(1, today.atTime(DayParts.EVENING, 0), today.plusDays(1).atStartOfDay()));
    }
    if (first.equals("last") && second.equals("night")) {
      return Optional.of(
          Span.of(2, today.minusDays(1).atTime(DayParts.EVENING, 0), today.atTime(6, 0)));
    }
    if (first.equals("recently") || first.equals("lately")) {
      return Optional.of(Span.days(1, today.minusDays(30), today.plusDays(1)));
    }
    if (first.equals("this") || first.equals("current")) {
      return DayParts.part(second, Span.day(1, today))
          .map(s -> s.longer(1))
          .or(() -> unit(second, 0));
    }
    if ((second.equals("of") || second.equals("on"))
        && DayParts.part(first, Span.day(0, today)).isPresent()) {
      return named(words, at + 2)
          .filter(Span::isOneDay)
          .flatMap(day -> DayParts.part(first, day).map(s -> s.longer(1)));
    }
    boolean last = LAST.contains(first);
    if (!last && !PAST.contains(first)) {
      return Optional.empty();
    }
    OptionalInt count = count(second);
    if (count.isPresent()) {
      boolean of = second.equals("couple") && word(words, at + 2).equals("of");
      return back(count.getAsInt(), word(words, at + (of ? 3 : 2)), of ? 4 : 3);
    }
    if (!last || second.equals("hour") || second.equals("day")) {
      return back(1, second, 2);
    }
    return unit(second, 1);
  }

  private static OptionalInt count(String word) {
    return switch (word) {
      case "couple" -> OptionalInt.of(2);
      case "few" -> OptionalInt.of(FEW);
      default -> Counting.of(word);
    };
  }

  /** "early october", "the end of last week", "mid november". */
  private Optional<Span> partOf(List<String> words, int at) {
    String first = word(words, at);
    if (word(words, at + 1).equals("half")) {
      return halfOf(words, at);
    }
    int third =
        EARLY.contains(first) ? 0 : MIDDLE.contains(first) ? 1 : LATE.contains(first) ? 2 : -1;
    if (third < 0) {
      return Optional.empty();
    }
    int more = word(words, at + 1).equals("of") ? 2 : 1;
    return unitPhrase(words, at + more)
        .filter(span -> !span.isOneDay())
        .map(span -> third(span, third).longer(more));
  }

  /** "The first half of october": a month is parted after its fifteenth day. */
  private Optional<Span> halfOf(List<String> words, int at) {
    String which = word(words, at);
    boolean early = Set.of("first", "1st", "early").contains(which);
    if (!early && !Set.of("second", "2nd", "last", "latter").contains(which)) {
      return Optional.empty();
    }
    int more = word(words, at + 2).equals("of") ? 3 : 2;
    return unitPhrase(words, at + more)
        .filter(span -> !span.isOneDay())
        .map(span -> half(span, early).longer(more));
  }

  private static Span half(Span whole, boolean early) {
    LocalDate from = whole.from().toLocalDate();
    LocalDate to = whole.to().toLocalDate();
    LocalDate middle = from.plusDays((from.until(to, ChronoUnit.DAYS)) / 2);
    return Span.days(whole.length(), early ? from : middle, early ? middle : to)
        .comingBack(whole.comesBack());
  }

  /** A third of a month is ten days; of all else, a third of its days. */
  private static Span third(Span whole, int third) {
    LocalDate from = whole.from().toLocalDate();
    LocalDate to = whole.to().toLocalDate();
    long days = from.until(to, ChronoUnit.DAYS);
    long step = days >= 28 && days <= 31 ? 10 : days / 3;
    LocalDate begin = from.plusDays(third * step);
    LocalDate end = third == 2 ? to : begin.plusDays(step);
    return Span.days(whole.length(), begin, end).comingBack(whole.comesBack());
  }

  private Optional<Span> unitPhrase(List<String> words, int at) {
    int the = word(words, at).equals("the") ? 1 : 0;
    return relative(words, at + the)
        .or(() -> dated.monthOrYear(words, at + the))
        .map(s -> s.longer(the));
  }

  /** "week 42", "first week of october". */
  private Optional<Span> weekOf(List<String> words, int at) {
    String first = word(words, at);
    int calendar = first.equals("calendar") ? 1 : 0;
    if (word(words, at + calendar).equals("week")
        && Counting.of(word(words, at + calendar + 1)).isPresent()) {
      int week = Counting.of(word(words, at + calendar + 1)).getAsInt();
      if (week >= 1 && week <= 53) {
        LocalDate monday =
            today
                .with(IsoFields.WEEK_OF_WEEK_BASED_YEAR, 1)
                .with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY))
                .plusWeeks(week - 1L);
        LocalDate begun = monday.isAfter(today) ? monday.minusYears(1) : monday;
        LocalDate of =
            monday.isAfter(today)
                ? begun
                    .with(IsoFields.WEEK_OF_WEEK_BASED_YEAR, week)
                    .with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY))
                : monday;
        return Optional.of(Span.days(2 + calendar, of, of.plusWeeks(1)));
      }
    }
    if (first.equals("week") && word(words, at + 1).equals("of")) {
      return named(words, at + 2)
          .filter(Span::isOneDay)
          .map(
              day -> {
                LocalDate monday =
                    day.from()
                        .toLocalDate()
                        .with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
                return Span.days(day.length() + 2, monday, monday.plusWeeks(1));
              });
    }
    OptionalInt ordinal = first.equals("last") ? OptionalInt.of(0) : Counting.ordinal(first);
    String preposition = word(words, at + 2);
    if (ordinal.isEmpty()
        || !word(words, at + 1).equals("week")
        || !preposition.equals("of") && !preposition.equals("in")) {
      return Optional.empty();
    }
    int which = ordinal.getAsInt();
    return unitPhrase(words, at + 3)
        .map(
            whole -> {
              LocalDate from = whole.from().toLocalDate();
              LocalDate to = whole.to().toLocalDate();
              LocalDate begin = which == 0 ? to.minusDays(7) : from.plusDays(7L * (which - 1));
              return Span.days(whole.length() + 3, begin, begin.plusDays(7));
            });
  }

  /** "3 days ago", "a week ago". */
  private Optional<Span> ago(List<String> words, int at) {
    String first = word(words, at);
    boolean one = first.equals("a") || first.equals("an");
    boolean couple = one && word(words, at + 1).equals("couple");
    int unitAt = couple ? at + (word(words, at + 2).equals("of") ? 3 : 2) : at + 1;
    OptionalInt count = couple ? OptionalInt.of(2) : one ? OptionalInt.of(1) : Counting.of(first);
    if (count.isEmpty() || !word(words, unitAt + 1).equals("ago")) {
      return Optional.empty();
    }
    int length = unitAt + 2 - at;
    int n = count.getAsInt();
    LocalDate monday = today.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY)).minusWeeks(n);
    LocalDate first1 = today.withDayOfMonth(1).minusMonths(n);
    return switch (word(words, unitAt)) {
      case "minute", "minutes" -> Optional.of(moment(length, now.minusMinutes(n)));
      case "hour", "hours" -> Optional.of(moment(length, now.minusHours(n)));
      case "day", "days" -> Optional.of(Span.day(length, today.minusDays(n)));
      case "fortnight" -> Optional.of(Span.day(length, today.minusDays(14)));
      case "week", "weeks" ->
          Optional.of(
              Span.days(length, monday, monday.plusWeeks(1)).startingAt(today.minusWeeks(n)));
      case "month", "months" ->
          Optional.of(
              Span.days(length, first1, first1.plusMonths(1)).startingAt(today.minusMonths(n)));
      case "year", "years" ->
          Optional.of(
              Span.days(
                      length,
                      Year.of(today.getYear() - n).atDay(1),
                      Year.of(today.getYear() - n + 1).atDay(1))
                  .startingAt(today.minusYears(n)));
      default -> Optional.empty();
    };
  }

  private static Span moment(int length, LocalDateTime at) {
    return Span.of(length, at, at.plusMinutes(1));
  }

  /** The running week, month or year, or one before. */
  private Optional<Span> unit(String unit, int back) {
    LocalDate monday = today.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    LocalDate first = today.withDayOfMonth(1);
    LocalDate newYear = today.withDayOfYear(1);
    LocalDate quarter = first.withMonth(first.getMonth().firstMonthOfQuarter().getValue());
    return switch (unit) {
      case "week" -> Optional.of(weeks(monday.minusWeeks(back)));
      case "weekend" -> {
        LocalDate saturday = monday.minusWeeks(back).plusDays(5);
        yield Optional.of(Span.days(2, saturday, saturday.plusDays(2)));
      }
      case "fortnight" -> back(14, "days", 2);
      case "month" ->
          Optional.of(Span.days(2, first.minusMonths(back), first.minusMonths(back).plusMonths(1)));
      case "quarter" ->
          Optional.of(
              Span.days(
                  2, quarter.minusMonths(3L * back), quarter.minusMonths(3L * back).plusMonths(3)));
      case "year" ->
          Optional.of(
              Span.days(2, newYear.minusYears(back), newYear.minusYears(back).plusYears(1)));
      default ->
          DatedDays.isMonth(unit) && back == 1
              ? dated.monthOrYear(List.of(unit), 0).map(span -> begun(span).longer(1))
              : Optional.empty();
    };
  }

  /** "last october" is over. */
  private Span begun(Span month) {
    return month.to().toLocalDate().isAfter(today) ? month.sooner() : month;
  }

  private static Span weeks(LocalDate monday) {
    return Span.days(2, monday, monday.plusWeeks(1));
  }

  /** So many hours, days, weeks, months or years before now, and today. */
  private Optional<Span> back(int count, String unit, int length) {
    if (unit.startsWith("hour") || unit.startsWith("minute")) {
      LocalDateTime from =
          unit.startsWith("hour") ? now.minusHours(count) : now.minusMinutes(count);
      return Optional.of(Span.of(length, from, now.plusMinutes(1)));
    }
    LocalDate from =
        switch (unit) {
          case "day", "days" -> today.minusDays(count);
          case "week", "weeks" -> today.minusWeeks(count);
          case "month", "months" -> today.minusMonths(count);
          case "year", "years" -> today.minusYears(count);
          default -> null;
        };
    return Optional.ofNullable(from).map(f -> Span.days(length, f, today.plusDays(1)));
  }

  /** Whether a word is the name of a weekday or a month. */
  static boolean isName(String word) {
    return Weekdays.isWeekday(word) || DatedDays.isMonth(word);
  }

  /** Days, months and years with their dates. */
  DatedDays dated() {
    return dated;
  }

  static String word(List<String> words, int at) {
    return at >= 0 && at < words.size() ? words.get(at).toLowerCase(Locale.ROOT) : "";
  }
}
