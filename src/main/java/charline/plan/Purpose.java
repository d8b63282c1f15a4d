package charline.plan;

import charline.refusal.Refusal;
import java.util.Arrays;
import java.util.stream.Collectors;

/** Why a patch is to be burned. */
public enum Purpose {
  /** Climbs from what is known to be safe. */
  CLIMB("climb"),
  /** Narrows what is known of char. */
  HOT_SIDE("hot side"),
  /** Narrows what is known of clearing. */
  COLD_SIDE("cold side"),
  /** Repeats a setting to see whether the rig still does the same. */
  CONTROL("control"),
  /** Repeats the start setting of a window that stands. */
  CONFIRM("confirm"),
  /** One of a pair that tells two ways of working apart. */
  TELL_APART("tell apart");

  private final String word;

  Purpose(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }

  /** The purpose that a word names. */
  public static Purpose ofWord(String word) {
    for (Purpose purpose : values()) {
      if (purpose.word.equals(word)) {
        return purpose;
      }
    }
    throw Refusal.usage(
        "A purpose must be one of %s, not \"%s\"."
            .formatted(
                Arrays.stream(values()).map(Purpose::word).collect(Collectors.joining(", ")),
                word));
  }
}
