package charline.trial;

import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
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

  /** What a decoder puts where bytes are no UTF-8. */
  private static final char UNREADABLE = '\uFFFD';

  private static final char HANGUL_FILLER = '\u3164';

  private static final Set<Character.UnicodeScript> WITHOUT_JOINERS =
      EnumSet.of(
          Character.UnicodeScript.LATIN,
          Character.UnicodeScript.GREEK,
          Character.UnicodeScript.CYRILLIC,
          Character.UnicodeScript.COMMON);

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

  /**
   * Where the first character of a name is that nobody can see or type again: a control character,
   * one that changes the direction of writing, a blank without width, or what stands for letters
   * that could not be read. Joiners between letters of a script that needs them are seen. Empty if
   * there is none. Source: Unicode Standard Annex 9, section 2, and Annex 31, section 2.3.
   */
  public static OptionalInt firstUnseen(String name) {
    for (int i = 0; i < name.length(); i++) {
      if (isUnseen(name, i)) {
        return OptionalInt.of(i);
      }
    }
    return OptionalInt.empty();
  }

  private static boolean isUnseen(String name, int at) {
    char character = name.charAt(at);
    return switch (Character.getType(name.codePointAt(at))) {
      case Character.FORMAT -> !(isJoiner(character) && joins(name, at));
      case Character.CONTROL, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR -> true;
      case Character.SURROGATE ->
          at == 0 || !Character.isSurrogatePair(name.charAt(at - 1), character);
      default -> character == UNREADABLE || character == HANGUL_FILLER;
    };
  }

  private static boolean isJoiner(char character) {
    return character == '\u200C' || character == '\u200D';
  }

  private static boolean joins(String name, int at) {
    return at > 0
        && at < name.length() - 1
        && !WITHOUT_JOINERS.contains(Character.UnicodeScript.of(name.codePointBefore(at)));
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
