package charline.trial;

import java.util.Optional;

/**
 * A hazard of the work in words for the person, with where it comes from.
 *
 * @param topic one or two words, such as "Lead"
 * @param text what to know and do, in full sentences
 * @param source standard, rule or "common practice, no published source"
 * @param inShort the poison or the fire in a few words, to be read before anything else
 * @param brief the text in a sentence or two, for paper
 * @param always true if it comes with every patch, whatever the coat and the wood
 */
public record Caution(
    String topic,
    String text,
    String source,
    Optional<String> inShort,
    Optional<String> brief,
    boolean always) {

  /** A caution with its text alone. */
  public Caution(String topic, String text, String source) {
    this(topic, text, source, Optional.empty(), Optional.empty(), false);
  }

  /** The text as paper has room for it. */
  public String onPaper() {
    return brief.orElse(text);
  }
}
