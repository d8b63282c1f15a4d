package charline.log;

import java.util.Locale;
import java.util.regex.Pattern;

/** How words are compared: case, hyphens, strokes and the number of blanks make no difference. */
final class Words {
  private static final Pattern BETWEEN = Pattern.compile("[\\s_/-]+");

  private Words() {}

  /** "Clear-Coat" and "clear coat" become "clear coat". */
  static String key(String words) {
    return BETWEEN.matcher(words.toLowerCase(Locale.ROOT)).replaceAll(" ").strip();
  }
}
