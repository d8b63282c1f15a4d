package charline.trial;

import charline.refusal.Refusal;
import java.util.Locale;

/** How dark a coat looks: a stand-in for how much of the beam it takes up. */
public enum Tone {
  PALE,
  MID,
  DARK;

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /**
   * The tone a word names.
   *
   * @throws Refusal if it names none
   */
  public static Tone ofWord(String word) {
    for (Tone t : values()) {
      if (t.word().equalsIgnoreCase(word.strip())) {
        return t;
      }
    }
    throw Refusal.usage("A tone must be pale, mid or dark, not \"" + word + "\".");
  }
}
