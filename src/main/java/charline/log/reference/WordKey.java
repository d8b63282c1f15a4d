package charline.log.reference;

import java.util.Locale;
import java.util.regex.Pattern;

/** How words are compared: case, hyphens, strokes and the number of blanks make no difference. */
public final class WordKey {
  private static final Pattern BETWEEN = Pattern.compile("[\\s_/-]+");

  private WordKey() {}

  /** "Clear-Coat" and "clear coat" become "clear coat". */
  public static String key(String words) {
    return BETWEEN.matcher(words.toLowerCase(Locale.ROOT)).replaceAll(" ").strip();
  }
}
