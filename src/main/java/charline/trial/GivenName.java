package charline.trial;

import charline.refusal.Refusal;
import java.util.OptionalInt;

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

  /**
   * Refuses a name with a character that cannot be seen: nobody could type it again, and it may
   * look like another name.
   *
   * @param what the name, as a sentence starts with it
   */
  public static void requireSeen(String what, String name) {
    OptionalInt unseen = PlainText.firstUnseen(name);
    if (unseen.isPresent()) {
      int at = unseen.getAsInt();
      throw Refusal.usage(
          "%s must not contain %s characters, and this one has U+%04X as its character %d; type it again instead of pasting it."
              .formatted(
                  what,
                  Character.isISOControl(name.charAt(at)) ? "control" : "unreadable or invisible",
                  name.codePointAt(at),
                  at + 1));
    }
  }

  /** The same for a name that older logs and sheets may hold in several lines. */
  public static void requireSeenInLines(String what, String name) {
    requireSeen(what, inOneLine(name));
  }

  /** The name with a blank for each line break and tab. */
  public static String inOneLine(String name) {
    return name.replace('\n', ' ').replace('\t', ' ');
  }

  /** The name, trimmed; refuses one that is empty, too long or holds a line break. */
  public static String checked(String what, String name) {
    String trimmed = name.strip();
    requireSeen("The name of a " + what, trimmed);
    if (trimmed.isEmpty() || trimmed.length() > LONGEST) {
      throw Refusal.usage(
          "The name of a %s must be 1 to %d characters in one line, not %d."
              .formatted(what, LONGEST, trimmed.length()));
    }
    return trimmed;
  }
}
