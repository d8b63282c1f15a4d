package charline.trial;

import charline.refusal.Refusal;
import java.util.Locale;

/** What a test found. */
public enum SampleResult {
  /** The substance is there. */
  FOUND,
  /** The sample is free of it. */
  FREE,
  /** The test says neither. */
  INCONCLUSIVE;

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /**
   * The result a word names.
   *
   * @throws Refusal if it names none
   */
  public static SampleResult ofWord(String word) {
    for (SampleResult r : values()) {
      if (r.word().equalsIgnoreCase(word.strip())) {
        return r;
      }
    }
    throw Refusal.usage(
        "The result of a sample must be found, free or inconclusive, not \"%s\"."
            .formatted(word.strip()));
  }
}
