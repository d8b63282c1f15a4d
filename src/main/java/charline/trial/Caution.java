package charline.trial;

/**
 * A hazard of the work in words for the person, with where it comes from.
 *
 * @param topic one or two words, such as "Lead"
 * @param text what to know and do, in full sentences
 * @param source standard, rule or "common practice, no published source"
 */
public record Caution(String topic, String text, String source) {}
