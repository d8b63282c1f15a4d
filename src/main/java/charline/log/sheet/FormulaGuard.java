package charline.log.sheet;

import java.util.regex.Pattern;

/**
 * Keeps a person's words from being run as a formula when a sheet is opened in a spreadsheet. Text
 * that starts with {@code = + - @}, the same as wide characters, which some spreadsheets take for
 * them, a tab or a return gets an apostrophe in front; reading takes that one apostrophe off again.
 * Text that already starts with apostrophes followed by such a character gets one more, so that
 * every text comes back as it was.
 */
final class FormulaGuard {
  private static final Pattern RISKY =
      Pattern.compile("'*[=+\\-@\\t\\r\uFF1D\uFF0B\uFF0D\uFF20].*", Pattern.DOTALL);
  private static final Pattern GUARDED =
      Pattern.compile("'+[=+\\-@\\t\\r\uFF1D\uFF0B\uFF0D\uFF20].*", Pattern.DOTALL);

  private FormulaGuard() {}

  /** The text, made safe for a cell. */
  static String guard(String text) {
    return RISKY.matcher(text).matches() ? "'" + text : text;
  }

  /** The text that {@link #guard} was given. */
  static String undo(String cell) {
    return cell.startsWith("'") && GUARDED.matcher(cell).matches() ? cell.substring(1) : cell;
  }
}
