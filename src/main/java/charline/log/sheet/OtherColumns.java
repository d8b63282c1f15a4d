package charline.log.sheet;

import charline.refusal.Refusal;
import java.util.Locale;

/** What becomes of columns that a trial sheet has and charline does not know. */
public enum OtherColumns {
  /** The sheet is refused and they are named. */
  REFUSE,
  /** Each cell goes into the note of its line as "heading: value". */
  NOTE,
  /** They are left out and named. */
  SKIP;

  /** What is wanted by that word: note or skip. */
  public static OtherColumns ofWord(String typed) {
    return switch (typed.strip().toLowerCase(Locale.ROOT)) {
      case "note", "notes" -> NOTE;
      case "skip" -> SKIP;
      default ->
          throw Refusal.usage(
              "Other columns go by note or skip, not by \"%s\".".formatted(typed.strip()));
    };
  }
}
