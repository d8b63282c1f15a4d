package charline.model.classical;

import charline.model.Event;
import java.util.List;
import java.util.Optional;

/** What became of a classical fit. */
public sealed interface ClassicalOutcome permits ClassicalFit, ClassicalOutcome.NoClassicalFit {
  Event event();

  Method method();

  /** Counts of rows and what they are, in a sentence. */
  String rows();

  /** A sentence for every column that was left out or cannot be separated from another. */
  List<String> notes();

  /** What separation means here, where outcomes are separated. */
  Optional<Separating> separation();

  /**
   * There is no fit.
   *
   * @param reason one sentence or two: what was found and what to do
   */
  record NoClassicalFit(
      Event event,
      Method method,
      String rows,
      List<String> notes,
      Optional<Separating> separation,
      String reason)
      implements ClassicalOutcome {}

  /**
   * Outcomes that a line divides.
   *
   * @param kind {@code complete} or {@code quasi-complete}
   * @param words what it means for these trials
   */
  record Separating(String kind, String words) {}
}
