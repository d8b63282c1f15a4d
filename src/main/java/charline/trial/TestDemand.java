package charline.trial;

import java.util.Arrays;

/**
 * What a coat must be tested for before the beam is on.
 *
 * @param substance what for, a word of the log
 * @param strictness how much hangs on it
 */
public record TestDemand(String substance, Strictness strictness) {
  /** How much hangs on a test, the strictest first. */
  public enum Strictness {
    /** No beam at all, whatever a sample says. */
    NEVER("never"),
    /** The coat is free by its name: nothing is to be asked. */
    KNOWN_FREE("known free"),
    /** No beam until a sample is free of it. */
    FREE_FIRST("free first"),
    /** Every paper says whether it was tested. */
    SAY("say");

    private final String word;

    Strictness(String word) {
      this.word = word;
    }

    /** The strictness that a word of the reference rows names. */
    public static Strictness ofWord(String word) {
      return Arrays.stream(values()).filter(s -> s.word.equals(word)).findFirst().orElseThrow();
    }
  }
}
