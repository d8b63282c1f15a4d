package charline.quote;

import charline.refusal.Refusal;
import java.util.Arrays;
import java.util.stream.Collectors;

/** What is known of lead in the coats of a job. */
public enum Lead {
  /** A test found none. */
  FREE("free"),
  /** A test found it. */
  FOUND("found"),
  /** Nobody knows: quoted as if it had been found. */
  NOT_TESTED("untested");

  private final String word;

  Lead(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }

  /** Whether work is contained and cleared. */
  public boolean contained() {
    return this != FREE;
  }

  /**
   * The one of that word.
   *
   * @throws Refusal that lists the words
   */
  public static Lead ofWord(String text) {
    return Arrays.stream(values())
        .filter(lead -> lead.word.equals(text.strip()))
        .findAny()
        .orElseThrow(
            () ->
                Refusal.usage(
                    "Lead must be one of %s, not \"%s\"."
                        .formatted(
                            Arrays.stream(values())
                                .map(Lead::word)
                                .collect(Collectors.joining(", ")),
                            text.strip())));
  }
}
