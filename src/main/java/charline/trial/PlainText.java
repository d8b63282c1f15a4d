package charline.trial;

import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A person's words as the log keeps them: every line end is LF, and every other control character
 * but the tab is a blank. Text pasted from elsewhere brings such characters along unseen, and
 * neither a page nor a trial sheet can hold them. What counts as a line end: the Unicode Standard,
 * section 5.8, Newline Guidelines.
 */
public final class PlainText {
  private static final Pattern LINE_END = Pattern.compile("\\R");
  private static final Pattern UNSEEN = Pattern.compile("[\\p{Cc}&&[^\\t\\n]]");

  private PlainText() {}

  /** True if {@link #of} would leave a text as it is. */
  public static boolean isPlain(String text) {
    for (int i = 0; i < text.length(); i++) { // no stream: every cell of a sheet passes here
      if (isStrange(text.charAt(i))) {
        return false;
      }
    }
    return true;
  }

  /** The text with its line ends and control characters made plain. */
  public static String of(String text) {
    return isPlain(text)
        ? text
        : UNSEEN.matcher(LINE_END.matcher(text).replaceAll("\n")).replaceAll(" ");
  }

  /** Free words, in which blanks and lines count; none if nothing can be seen of them. */
  public static Optional<String> prose(Optional<String> words) {
    return words.map(PlainText::of).filter(text -> !text.isBlank());
  }

  /** A short answer, such as who it was, without blanks around it; none if nothing is left. */
  public static Optional<String> answer(Optional<String> words) {
    return words.map(text -> of(text).strip()).filter(text -> !text.isEmpty());
  }

  private static boolean isStrange(char character) {
    boolean lineEnd = character == '\u2028' || character == '\u2029';
    return lineEnd || Character.isISOControl(character) && character != '\t' && character != '\n';
  }
}
