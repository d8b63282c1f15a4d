package charline.log;

import java.util.Locale;

/** How words are compared: case, hyphens, strokes and the number of blanks make no difference. */
final class Words {
  private Words() {}

  /** "Clear-Coat" and "clear coat" become "clear coat". */
  static String key(String words) {
    return words.toLowerCase(Locale.ROOT).replaceAll("[\\s_/-]+", " ").strip();
  }
}
