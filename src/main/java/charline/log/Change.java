package charline.log;

import java.time.OffsetDateTime;
import java.util.Optional;

/**
 * One change to something recorded, written by the database itself.
 *
 * @param at when
 * @param by who, if known
 * @param what table and column, such as "reading.outcome"; "reading" alone where a whole reading
 *     was struck or counts again
 * @param before old value, empty where there was none; of a rig, a board or a finish its name, of a
 *     reading what was seen, such as "char after 2 passes"
 * @param after new value, empty where it was taken out; named likewise
 * @param why reason given, if any
 * @param part which part it is of, where what was asked about has several, such as "power check of
 *     2026-06-01"
 */
public record Change(
    OffsetDateTime at,
    Optional<String> by,
    String what,
    Optional<String> before,
    Optional<String> after,
    Optional<String> why,
    Optional<String> part) {
  private static final String JOINED = ".joined_into";

  /** A change to something as a whole. */
  public Change(
      OffsetDateTime at,
      Optional<String> by,
      String what,
      Optional<String> before,
      Optional<String> after,
      Optional<String> why) {
    this(at, by, what, before, after, why, Optional.empty());
  }

  /** The change in words: "power from 42 % to 45 %". */
  public String words() {
    if (what.equals(ReadingWords.WHOLE)) {
      return after
          .map("reading counts again: "::concat)
          .orElse("reading struck: " + before.orElse(""));
    }
    String lead = part.map(p -> p + ": ").orElse("");
    if (what.endsWith(JOINED) && after.isPresent()) {
      return lead + "joined into " + after.get();
    }
    ColumnWords column = ColumnWords.of(what);
    return "%s%s from %s to %s"
        .formatted(
            lead,
            column.name(),
            before.map(column::value).orElse("nothing"),
            after.map(column::value).orElse("nothing"));
  }

  /** Whether this only tells the same change once more, in the words a person typed. */
  public boolean isEcho() {
    return what.endsWith(".typed_json");
  }
}
