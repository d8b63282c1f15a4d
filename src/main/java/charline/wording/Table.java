package charline.wording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A plain table of at most 80 columns. Columns are as wide as they need to be; if that is too much,
 * the last one gives way and its text goes on in the next line.
 */
public final class Table {
  /** Widest line that is ever printed. */
  public static final int WIDTH = 80;

  private static final int LEAST = 8;
  private static final String GAP = "  ";

  private final String[] heads;
  private final boolean[] right;
  private final List<String[]> rows = new ArrayList<>();

  /**
   * @param heads column heads; one that begins with {@code >} sets its column flush right
   */
  public Table(String... heads) {
    this.heads = new String[heads.length];
    this.right = new boolean[heads.length];
    for (int i = 0; i < heads.length; i++) {
      right[i] = heads[i].startsWith(">");
      this.heads[i] = right[i] ? heads[i].substring(1) : heads[i];
    }
  }

  /** Adds a row, one cell per column. */
  public Table row(String... cells) {
    if (cells.length != heads.length) {
      throw new IllegalArgumentException(
          "A row must have %d cells, not %d.".formatted(heads.length, cells.length));
    }
    rows.add(Arrays.stream(cells).map(Table::oneLine).toArray(String[]::new));
    return this;
  }

  /** The table with every line indented by two blanks and ended by a line feed. */
  public String text() {
    int[] widths = widths();
    StringBuilder text = new StringBuilder();
    row(text, heads, widths);
    rows.forEach(row -> row(text, row, widths));
    return text.toString();
  }

  private int[] widths() {
    int[] widths = new int[heads.length];
    for (int i = 0; i < heads.length; i++) {
      int column = i;
      widths[i] =
          Math.max(
              heads[i].length(), rows.stream().mapToInt(r -> r[column].length()).max().orElse(0));
    }
    int last = heads.length - 1;
    int before = Arrays.stream(widths, 0, last).sum() + GAP.length() * heads.length;
    widths[last] = Math.min(widths[last], Math.max(LEAST, WIDTH - before));
    return widths;
  }

  private void row(StringBuilder text, String[] cells, int[] widths) {
    int last = cells.length - 1;
    List<String> folded = fold(cells[last], widths[last]);
    for (int n = 0; n < folded.size(); n++) {
      StringBuilder line = new StringBuilder();
      for (int i = 0; i < last; i++) {
        line.append(GAP).append(padded(n == 0 ? cells[i] : "", widths[i], right[i]));
      }
      line.append(GAP).append(padded(folded.get(n), widths[last], right[last]));
      text.append(line.toString().stripTrailing()).append('\n');
    }
  }

  private static String padded(String cell, int width, boolean right) {
    String blanks = " ".repeat(Math.max(0, width - cell.length()));
    return right ? blanks + cell : cell + blanks;
  }

  /** A text without line breaks or anything else that would move a terminal's cursor. */
  private static String oneLine(String text) {
    return text.replaceAll("\\p{Cntrl}+", " ");
  }

  /** Breaks a text into lines of at most a width, at blanks where there are any. */
  public static List<String> fold(String text, int width) {
    List<String> lines = new ArrayList<>();
    String rest = oneLine(text).strip();
    while (rest.length() > width) {
      int cut = rest.lastIndexOf(' ', width);
      if (cut <= 0) {
        cut = width;
      }
      lines.add(rest.substring(0, cut).strip());
      rest = rest.substring(cut).strip();
    }
    lines.add(rest);
    return lines;
  }

  /** Text folded to the width of a table, lines after the first indented by two blanks. */
  public static String paragraph(String text) {
    return String.join("\n  ", fold(text, WIDTH - 2));
  }

  /** A head such as a number, then text folded beside it, with a line end. */
  static String hanging(String head, String text) {
    String blanks = " ".repeat(head.length());
    return head + String.join("\n" + blanks, fold(text, WIDTH - head.length())) + "\n";
  }

  /** Adds such a paragraph to a text and ends its line. */
  public static void line(StringBuilder text, String sentence) {
    text.append(paragraph(sentence)).append('\n');
  }
}
