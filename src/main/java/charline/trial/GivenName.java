package charline.trial;

import charline.refusal.Refusal;

/** Names that a person gives to rigs, boards and finishes. */
public final class GivenName {
  private static final int LONGEST = 60;

  private GivenName() {}

  /**
   * The name on a trial sheet, trimmed; refuses one that is empty or too long. Line breaks pass, as
   * older logs kept them and their sheets must come back.
   */
  public static String fromSheet(String what, String name) {
    String trimmed = name.strip();
    if (trimmed.isEmpty() || trimmed.length() > LONGEST) {
      throw Refusal.usage(
          "The name of a %s must be 1 to %d characters, not %d."
              .formatted(what, LONGEST, trimmed.length()));
    }
    return trimmed;
  }

  /** The name, trimmed; refuses one that is empty, too long or holds a line break. */
  public static String checked(String what, String name) {
    String trimmed = name.strip();
    if (trimmed.isEmpty()
        || trimmed.length() > LONGEST
        || trimmed.chars().anyMatch(Character::isISOControl)) {
      throw Refusal.usage(
          "The name of a %s must be 1 to %d characters in one line, not %d."
              .formatted(what, LONGEST, trimmed.length()));
    }
    return trimmed;
  }
}
