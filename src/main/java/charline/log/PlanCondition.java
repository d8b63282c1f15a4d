package charline.log;

import java.util.Arrays;
import java.util.NoSuchElementException;
import java.util.UUID;

/**
 * What must have happened on another planned patch before a plan may be burned.
 *
 * @param plan identity of the other plan
 * @param code its code as it is now
 * @param kind what must have happened there
 */
public record PlanCondition(UUID plan, String code, Kind kind) {
  /** What must have happened. */
  public enum Kind {
    /** The other plan was burned and did not char: a rung of a ladder. */
    NO_CHAR("no char");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    /** As the log keeps it. */
    String word() {
      return word;
    }

    static Kind ofWord(String word) {
      return Arrays.stream(values())
          .filter(kind -> kind.word.equals(word))
          .findFirst()
          .orElseThrow(() -> new NoSuchElementException("\"%s\" is no condition".formatted(word)));
    }
  }

  /** A condition on a plan that has its code. */
  public static PlanCondition noChar(PlannedPatch earlier) {
    return new PlanCondition(earlier.id(), earlier.code(), Kind.NO_CHAR);
  }

  /** "only if P-0050 did not char". */
  public String words() {
    return switch (kind) {
      case NO_CHAR -> "only if %s did not char".formatted(code);
    };
  }
}
