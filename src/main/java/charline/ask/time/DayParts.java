package charline.ask.time;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Mornings, evenings and times of a day. */
final class DayParts {
  private static final Pattern TIME =
      Pattern.compile("(\\d{1,2})(?:[:.](\\d{2}))?(am|pm)|(\\d{1,2})[:h](\\d{2})");
  private static final int NOON = 12;
  static final int EVENING = 18;

  private DayParts() {}

  /** A day, and after it "morning", "in the afternoon" or a time. */
  static Span withPart(List<String> words, int at, Span day) {
    int next = at + day.length();
    int in =
        CalendarWords.word(words, next).equals("in")
                && CalendarWords.word(words, next + 1).equals("the")
            ? 2
            : 0;
    Optional<Span> part = part(CalendarWords.word(words, next + in), day).map(s -> s.longer(in));
    if (part.isPresent()) {
      return part.get();
    }
    Optional<Span> side = beforeOrAfter(words, next, day);
    if (side.isPresent()) {
      return side.get();
    }
    int preposition = CalendarWords.word(words, next).equals("at") ? 1 : 0;
    return timeOfDay(CalendarWords.word(words, next + preposition), day.from().toLocalDate())
        .map(
            time ->
                Span.of(
                    day.length() + preposition + 1 + afterTime(words, next + preposition + 1),
                    time,
                    time.plusMinutes(1)))
        .orElse(day);
  }

  /** "Before 9:15" and "after noon" of that day. */
  private static Optional<Span> beforeOrAfter(List<String> words, int at, Span day) {
    boolean before = Set.of("before", "until", "till").contains(CalendarWords.word(words, at));
    boolean after = Set.of("after", "since", "from").contains(CalendarWords.word(words, at));
    if (!before && !after) {
      return Optional.empty();
    }
    LocalDate date = day.from().toLocalDate();
    return clockTime(words, at + 1, date)
        .map(
            clock ->
                Span.of(
                    day.length() + 1 + clock.length(),
                    before ? date.atStartOfDay() : clock.from(),
                    before ? clock.from() : date.plusDays(1).atStartOfDay()));
  }

  /** "9:15 in the morning" is no other time than 9:15. */
  private static int afterTime(List<String> words, int at) {
    boolean morning =
        CalendarWords.word(words, at).equals("in")
            && CalendarWords.word(words, at + 1).equals("the")
            && CalendarWords.word(words, at + 2).equals("morning");
    return morning ? 3 : 0;
  }

  static Optional<Span> part(String word, Span day) {
    LocalDate date = day.from().toLocalDate();
    int length = day.length() + 1;
    LocalDateTime end = date.plusDays(1).atStartOfDay();
    return switch (word) {
      case "morning", "forenoon" ->
          Optional.of(Span.of(length, date.atStartOfDay(), date.atTime(NOON, 0)));
      case "afternoon" ->
          Optional.of(Span.of(length, date.atTime(NOON, 0), date.atTime(EVENING, 0)));
      case "evening", "night" -> Optional.of(Span.of(length, date.atTime(EVENING, 0), end));
      default -> Optional.empty();
    };
  }

  /** A time of today. */
  static Optional<Span> clockTime(List<String> words, int at, LocalDate today) {
    String first = CalendarWords.word(words, at);
    Optional<LocalDateTime> time =
        first.equals("noon")
            ? Optional.of(today.atTime(NOON, 0))
            : timeOfDay(first, today)
                .or(
                    () ->
                        timeOfDay(first + CalendarWords.word(words, at + 1), today)
                            .filter(t -> first.matches("\\d+")));
    int told = time.isPresent() && first.matches("\\d+") ? 2 : 1;
    int length = told + afterTime(words, at + told);
    return time.map(t -> Span.of(length, t, t.plusMinutes(1)));
  }

  private static Optional<LocalDateTime> timeOfDay(String word, LocalDate day) {
    Matcher matcher = TIME.matcher(word);
    if (!matcher.matches()) {
      return Optional.empty();
    }
    boolean half = matcher.group(3) != null;
    int hour = Integer.parseInt(half ? matcher.group(1) : matcher.group(4));
    String minute = half ? matcher.group(2) : matcher.group(5);
    if (half) {
      hour = hour % NOON + (matcher.group(3).equals("pm") ? NOON : 0);
    }
    int minutes = minute == null ? 0 : Integer.parseInt(minute);
    return hour > 23 || minutes > 59 ? Optional.empty() : Optional.of(day.atTime(hour, minutes));
  }
}
