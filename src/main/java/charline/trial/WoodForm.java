package charline.trial;

import charline.refusal.Refusal;
import java.util.Locale;

/** What kind of piece a board is. */
public enum WoodForm {
  SOLID,
  VENEER,
  PLYWOOD,
  MDF;

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /**
   * The form a word names.
   *
   * @throws Refusal if it names none
   */
  public static WoodForm ofWord(String word) {
    for (WoodForm f : values()) {
      if (f.word().equalsIgnoreCase(word.strip())) {
        return f;
      }
    }
    throw Refusal.usage(
        "A board's form must be solid, veneer, plywood or mdf, not \"" + word + "\".");
  }
}
