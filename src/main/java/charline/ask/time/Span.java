package charline.ask.time;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;

/**
 * A stretch of time that some words name.
 *
 * @param length how many words
 * @param from its beginning
 * @param to the moment after its end
 * @param start from when on "since" counts, where that is not the beginning: two weeks ago is a
 *     week, and since two weeks ago begins on a day
 * @param comesBack after which time the same words name another one
 */
record Span(
    int length, LocalDateTime from, LocalDateTime to, LocalDateTime start, Return comesBack) {
  /** After which time a phrase names another stretch. */
  enum Return {
    NEVER,
    WEEKLY,
    YEARLY
  }

  static Span of(int length, LocalDateTime from, LocalDateTime to) {
    return new Span(length, from, to, from, Return.NEVER);
  }

  /** Whole days from the first, up to but without the last. */
  static Span days(int length, LocalDate from, LocalDate to) {
    return of(length, from.atStartOfDay(), to.atStartOfDay());
  }

  static Span day(int length, LocalDate day) {
    return days(length, day, day.plusDays(1));
  }

  Span longer(int words) {
    return new Span(length + words, from, to, start, comesBack);
  }

  Span startingAt(LocalDate day) {
    return new Span(length, from, to, day.atStartOfDay(), comesBack);
  }

  Span comingBack(Return when) {
    return new Span(length, from, to, start, when);
  }

  boolean isWholeDays() {
    return from.toLocalTime().equals(LocalTime.MIDNIGHT)
        && to.toLocalTime().equals(LocalTime.MIDNIGHT);
  }

  boolean isOneDay() {
    return from.toLocalTime().equals(LocalTime.MIDNIGHT) && to.equals(from.plusDays(1));
  }

  /** The same words a week or a year sooner. */
  Span sooner() {
    return switch (comesBack) {
      case NEVER -> this;
      case WEEKLY -> shifted(ChronoUnit.WEEKS);
      case YEARLY -> shifted(ChronoUnit.YEARS);
    };
  }

  private Span shifted(ChronoUnit unit) {
    return new Span(
        length, from.minus(1, unit), to.minus(1, unit), start.minus(1, unit), comesBack);
  }
}
