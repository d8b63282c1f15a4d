package charline.ask.time;

import charline.ask.time.Span.Return;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.Month;
import java.time.OffsetDateTime;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Times in plain words with the word that relates them: {@code in march}, {@code since 2026-03-01},
 * {@code from monday to wednesday}.
 */
public final class TimePhrase {
  /**
   * A phrase that was understood.
   *
   * @param length how many words it took
   * @param since burned at or after
   * @param until burned before
   */
  public record Found(int length, Optional<OffsetDateTime> since, Optional<OffsetDateTime> until) {}

  private static final Set<String> WITHIN =
      Set.of(
          "in",
          "on",
          "during",
          "within",
          "of",
          "at",
          "over",
          "through",
          "throughout",
          "for",
          "around");
  private static final Set<String> UP_TO = Set.of("until", "till", "til", "to");
  private static final Set<String> RANGE =
      Set.of("to", "until", "till", "til", "through", "thru", "and", "-", "–", "bis");
  private static final Set<String> ON = Set.of("on", "onwards", "onward");

  private final CalendarWords calendar;
  private final ZoneId zone;

  public TimePhrase(Clock clock) {
    calendar = new CalendarWords(clock);
    zone = clock.getZone();
  }

  /** The phrase that starts at a word and cannot mean anything else. */
  public Optional<Found> at(List<String> words, int start) {
    String first = word(words, start);
    if (first.equals("between")) {
      return range(words, start + 1, Set.of("and", "to")).map(s -> between(s, 1));
    }
    if (first.equals("from") || first.equals("since") || first.equals("starting")) {
      return starting(words, start);
    }
    if (first.equals("up") && word(words, start + 1).equals("to")) {
      return calendar.any(words, start + 2).map(s -> ending(s, s.to(), 2));
    }
    if (UP_TO.contains(first)) {
      return calendar.any(words, start + 1).map(s -> ending(s, s.to(), 1));
    }
    if (first.equals("after")) {
      return calendar.any(words, start + 1).map(s -> beginning(s, s.to(), 1));
    }
    if (first.equals("before")) {
      return calendar.any(words, start + 1).map(s -> ending(s, s.start(), 1));
    }
    if (first.equals("later") || first.equals("earlier")) {
      return word(words, start + 1).equals("than")
          ? calendar
              .any(words, start + 2)
              .map(s -> first.equals("later") ? beginning(s, s.to(), 2) : ending(s, s.from(), 2))
          : Optional.empty();
    }
    if ((first.equals("older") || first.equals("newer") || first.equals("younger"))
        && word(words, start + 1).equals("than")) {
      return duration(words, start + 2)
          .map(s -> first.equals("older") ? ending(s, s.start(), 1) : beginning(s, s.start(), 1));
    }
    if (WITHIN.contains(first)) {
      int the = word(words, start + 1).equals("the") ? 1 : 0;
      return range(words, start + 1, RANGE)
          .map(s -> between(s, 1))
          .or(() -> calendar.named(words, start + 1).map(s -> between(s, 1)))
          .or(
              () ->
                  calendar
                      .dated()
                      .monthOrYear(words, start + 1 + the)
                      .map(s -> between(s, 1 + the)));
    }
    return range(words, start, Set.of("to", "until", "till", "through", "thru", "-", "–"))
        .or(() -> calendar.named(words, start))
        .map(s -> between(s, 0));
  }

  /** "two weeks", as "two weeks ago"; or a time. */
  private Optional<Span> duration(List<String> words, int at) {
    if (at + 2 > words.size()) {
      return calendar.any(words, at).map(s -> s.longer(1));
    }
    List<String> ago = new ArrayList<>(words.subList(at, at + 2));
    ago.add("ago");
    return calendar
        .named(ago, 0)
        .filter(s -> s.length() == 3)
        .or(() -> calendar.any(words, at).map(s -> s.longer(1)));
  }

  /** "since march", "from monday to wednesday", "from last week", "from 1 march on". */
  private Optional<Found> starting(List<String> words, int start) {
    boolean from = word(words, start).equals("from");
    if (from) {
      Optional<Span> range = range(words, start + 1, RANGE);
      if (range.isPresent()) {
        return range.map(s -> between(s, 1));
      }
    }
    return calendar
        .any(words, start + 1)
        .map(
            span -> {
              int next = start + 1 + span.length();
              boolean on =
                  ON.contains(word(words, next)) && calendar.any(words, next + 1).isEmpty();
              return from && !on ? between(span, 1) : beginning(span, span.start(), on ? 2 : 1);
            });
  }

  /** Two stretches and all between them; a day of the month may leave its month to the other. */
  private Optional<Span> range(List<String> words, int at, Set<String> joining) {
    int the = word(words, at).equals("the") ? 1 : 0;
    OptionalInt bare = calendar.dated().dayNumber(words, at + the);
    if (bare.isPresent() && joining.contains(word(words, at + the + 1))) {
      return calendar
          .named(words, at + the + 2)
          .filter(Span::isOneDay)
          .flatMap(end -> fromDay(bare.getAsInt(), end))
          .map(s -> s.longer(the + 2));
    }
    Optional<Span> first = calendar.any(words, at);
    if (first.isEmpty() || !joining.contains(word(words, at + first.get().length()))) {
      return Optional.empty();
    }
    int next = at + first.get().length() + 1;
    Optional<Span> second = calendar.any(words, next);
    OptionalInt number = calendar.dated().dayNumber(words, next);
    if (second.isEmpty() && number.isPresent() && first.get().isOneDay()) {
      LocalDate day = first.get().from().toLocalDate();
      YearMonth month = YearMonth.from(day);
      if (month.isValidDay(number.getAsInt()) && number.getAsInt() >= day.getDayOfMonth()) {
        LocalDate end = month.atDay(number.getAsInt());
        return Optional.of(Span.days(first.get().length() + 2, day, end.plusDays(1)));
      }
    }
    return second.flatMap(end -> joined(first.get(), end));
  }

  private static Optional<Span> fromDay(int number, Span end) {
    LocalDate last = end.from().toLocalDate();
    YearMonth month = YearMonth.from(last);
    return month.isValidDay(number) && number <= last.getDayOfMonth()
        ? Optional.of(Span.days(end.length(), month.atDay(number), last.plusDays(1)))
        : Optional.empty();
  }

  private static Optional<Span> joined(Span first, Span second) {
    Span begin = first;
    if (begin.from().isAfter(second.from()) && begin.comesBack() != Return.NEVER) {
      begin = begin.sooner();
    }
    if (begin.from().isAfter(second.to())) {
      return Optional.empty();
    }
    boolean moment = second.from().plusMinutes(1).equals(second.to());
    return Optional.of(
        Span.of(
            first.length() + 1 + second.length(),
            begin.start(),
            moment ? second.from() : second.to()));
  }

  /** The stretch that all these words name together. */
  Optional<Span> whole(List<String> words) {
    return range(words, 0, RANGE)
        .filter(s -> s.length() == words.size())
        .or(() -> calendar.any(words, 0))
        .filter(s -> s.length() == words.size());
  }

  /** A bare month or year, which may as well be somebody's name. */
  public Optional<Found> bareAt(List<String> words, int start) {
    return calendar.dated().monthOrYear(words, start).map(s -> between(s, 0));
  }

  /** Whether a word is the name of a weekday or a month. */
  public static boolean isName(String word) {
    return CalendarWords.isName(word);
  }

  /** Names of times in one word, to offer for a mistyped one. */
  public static List<String> names() {
    List<String> names =
        new ArrayList<>(
            List.of(
                "today",
                "yesterday",
                "tonight",
                "recently",
                "morning",
                "afternoon",
                "evening",
                "week",
                "month",
                "year",
                "since",
                "until",
                "before"));
    Stream.of(DayOfWeek.values()).map(d -> d.name().toLowerCase(Locale.ROOT)).forEach(names::add);
    Stream.of(Month.values()).map(m -> m.name().toLowerCase(Locale.ROOT)).forEach(names::add);
    return names;
  }

  /** True for a word that a time must follow. */
  public static boolean needsTime(String word) {
    return word.equals("since")
        || word.equals("until")
        || word.equals("till")
        || word.equals("before");
  }

  /** Refuses a day in figures, of which people read the month now first, now second. */
  public static void requireOneReading(String word) {
    DatedDays.requireOneReading(word);
  }

  private Found between(Span span, int more) {
    return new Found(span.length() + more, moment(span.from()), moment(span.to()));
  }

  private Found beginning(Span span, LocalDateTime from, int more) {
    return new Found(span.length() + more, moment(from), Optional.empty());
  }

  private Found ending(Span span, LocalDateTime to, int more) {
    return new Found(span.length() + more, Optional.empty(), moment(to));
  }

  private Optional<OffsetDateTime> moment(LocalDateTime time) {
    return Optional.of(time.atZone(zone).toOffsetDateTime());
  }

  private static String word(List<String> words, int at) {
    return CalendarWords.word(words, at);
  }
}
