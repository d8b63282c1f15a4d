package charline.log;

import charline.trial.Reading;
import java.util.Optional;

/** A struck reading in words, which nothing else shows any more. */
final class ReadingWords {
  /** What a {@link Change} of a whole reading calls it. */
  static final String WHOLE = "reading";

  private ReadingWords() {}

  /** "char after 2 passes, soot, depth 40 µm". */
  static String of(Reading reading) {
    StringBuilder words =
        new StringBuilder(reading.outcome().text()).append(" after ").append(passes(reading));
    reading.soot().ifPresent(soot -> words.append(soot ? ", soot" : ", no soot"));
    reading
        .depthMicrometres()
        .ifPresent(
            depth ->
                words
                    .append(", depth ")
                    .append(ColumnWords.of("reading.depth_um").value(String.valueOf(depth))));
    reading.note().ifPresent(note -> words.append(", note \"").append(note).append('"'));
    return words.toString();
  }

  private static String passes(Reading reading) {
    return reading.passes() == 1 ? "1 pass" : reading.passes() + " passes";
  }

  /** The change that struck a reading or let it count again, with what was seen. */
  static Change ofWhole(Change change, Reading reading) {
    Optional<String> seen = Optional.of(of(reading));
    boolean struck = change.before().isEmpty();
    return new Change(
        change.at(),
        change.by(),
        WHOLE,
        struck ? seen : Optional.empty(),
        struck ? Optional.empty() : seen,
        change.why().or(change::after));
  }
}
