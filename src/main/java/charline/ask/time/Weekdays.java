package charline.ask.time;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Days named by their weekday: of this week, of the last, or the latest of the name. */
final class Weekdays {
  private static final Map<String, DayOfWeek> NAMES =
      Map.ofEntries(
          Map.entry("monday", DayOfWeek.MONDAY),
          Map.entry("mon", DayOfWeek.MONDAY),
          Map.entry("tuesday", DayOfWeek.TUESDAY),
          Map.entry("tue", DayOfWeek.TUESDAY),
          Map.entry("tues", DayOfWeek.TUESDAY),
          Map.entry("wednesday", DayOfWeek.WEDNESDAY),
          Map.entry("wed", DayOfWeek.WEDNESDAY),
          Map.entry("thursday", DayOfWeek.THURSDAY),
          Map.entry("thu", DayOfWeek.THURSDAY),
          Map.entry("thur", DayOfWeek.THURSDAY),
          Map.entry("thurs", DayOfWeek.THURSDAY),
          Map.entry("friday", DayOfWeek.FRIDAY),
          Map.entry("fri", DayOfWeek.FRIDAY),
          Map.entry("saturday", DayOfWeek.SATURDAY),
          Map.entry("sat", DayOfWeek.SATURDAY),
          Map.entry("sunday", DayOfWeek.SUNDAY),
          Map.entry("sun", DayOfWeek.SUNDAY));

  private final LocalDate today;
  private final DatedDays dated;

  Weekdays(LocalDate today, DatedDays dated) {
    this.today = today;
    this.dated = dated;
  }

  static boolean isWeekday(String word) {
    return NAMES.containsKey(word);
  }

  /** "monday", "last monday", "monday of last week", "monday 5 october". */
  Optional<Span> day(List<String> words, int at) {
    int more = 0;
    boolean before = CalendarWords.LAST.contains(CalendarWords.word(words, at));
    boolean running = CalendarWords.THIS.contains(CalendarWords.word(words, at));
    if (before || running) {
      more = 1;
    }
    DayOfWeek named = NAMES.get(CalendarWords.word(words, at + more));
    if (named == null) {
      return lastWeekOn(words, at);
    }
    LocalDate monday = today.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    int of = CalendarWords.word(words, at + more + 1).equals("of") ? 1 : 0;
    if (!before
        && CalendarWords.word(words, at + more + 1 + of).equals("last")
        && CalendarWords.word(words, at + more + 2 + of).equals("week")) {
      LocalDate day = monday.minusWeeks(1).with(TemporalAdjusters.nextOrSame(named));
      return Optional.of(DayParts.withPart(words, at, Span.day(more + 3 + of, day)));
    }
    if (!before
        && CalendarWords.word(words, at + more + 1 + of).equals("this")
        && CalendarWords.word(words, at + more + 2 + of).equals("week")) {
      LocalDate day = monday.with(TemporalAdjusters.nextOrSame(named));
      return Optional.of(DayParts.withPart(words, at, Span.day(more + 3 + of, day)));
    }
    LocalDate day =
        running && !CalendarWords.word(words, at).equals("the")
            ? monday.with(TemporalAdjusters.nextOrSame(named))
            : today.with(
                before
                    ? TemporalAdjusters.previous(named)
                    : TemporalAdjusters.previousOrSame(named));
    // "monday 5 october" is that day, if it was a Monday
    Optional<Span> onDate = dated.day(words, at + more + 1).filter(Span::isOneDay);
    if (onDate.isPresent() && onDate.get().from().getDayOfWeek() == named) {
      return Optional.of(DayParts.withPart(words, at, onDate.get().longer(more + 1)));
    }
    return Optional.of(
        DayParts.withPart(words, at, Span.day(more + 1, day))
            .comingBack(before ? Span.Return.NEVER : Span.Return.WEEKLY));
  }

  /** "last week monday", "last week on monday". */
  private Optional<Span> lastWeekOn(List<String> words, int at) {
    if (!CalendarWords.LAST.contains(CalendarWords.word(words, at))
        || !CalendarWords.word(words, at + 1).equals("week")) {
      return Optional.empty();
    }
    int on = CalendarWords.word(words, at + 2).equals("on") ? 1 : 0;
    DayOfWeek named = NAMES.get(CalendarWords.word(words, at + 2 + on));
    if (named == null) {
      return Optional.empty();
    }
    LocalDate monday = today.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    LocalDate day = monday.minusWeeks(1).with(TemporalAdjusters.nextOrSame(named));
    return Optional.of(DayParts.withPart(words, at, Span.day(3 + on, day)));
  }
}
