package charline.cli.setup;

import charline.refusal.Refusal;

/** Names that a person gives to things. */
final class Names {
  private static final int LONGEST = 60;

  private Names() {}

  /** The name, trimmed; refuses one that is empty, too long or holds a line break. */
  static String checked(String what, String name) {
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
