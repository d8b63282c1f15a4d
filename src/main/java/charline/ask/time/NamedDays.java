package charline.ask.time;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Days named in plain words, as a question has them: {@code 4 may}, {@code last week}.
 *
 * @param first the first day
 * @param last the last day, the first where it is one
 */
public record NamedDays(LocalDate first, LocalDate last) {
  /**
   * The days that a text names; empty where it names none, or more than days.
   *
   * @throws charline.refusal.Refusal if the calendar has no such day, or figures may be read in two
   *     ways
   */
  public static Optional<NamedDays> read(String text, Clock clock) {
    List<String> words =
        Arrays.stream(text.strip().split("[\\s,]+")).filter(w -> !w.isEmpty()).toList();
    Optional<Span> span = words.isEmpty() ? Optional.empty() : new TimePhrase(clock).whole(words);
    if (span.isEmpty()) {
      words.forEach(TimePhrase::requireOneReading);
    }
    return span.filter(Span::isWholeDays)
        .map(s -> new NamedDays(s.from().toLocalDate(), s.to().minusNanos(1).toLocalDate()));
  }
}
