package charline.wording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToIntFunction;
import java.util.regex.Pattern;

/**
 * A plain table of at most 80 columns. Columns are as wide as they need to be; if that is too much,
 * the last one gives way and its text goes on in the next line. Where that would break its words,
 * the widest columns of text give way too.
 */
public final class Table {
  /** Widest line that is ever printed. */
  public static final int WIDTH = 80;

  private static final int LEAST = 8;
  private static final String GAP = "  ";
  private static final Pattern CONTROLS = Pattern.compile("\\p{Cntrl}+");

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
    int[] least = new int[heads.length];
    for (int i = 0; i < heads.length; i++) {
      widths[i] = widest(i, String::length);
      least[i] = right[i] ? widths[i] : widest(i, Table::longestWord);
    }
    int last = heads.length - 1;
    int room = WIDTH - GAP.length() * heads.length;
    int left = room - Arrays.stream(widths, 0, last).sum();
    if (left < Math.min(widths[last], least[last])) {
      giveWay(widths, least, room);
      left = room - Arrays.stream(widths, 0, last).sum();
    }
    widths[last] = Math.min(widths[last], Math.max(LEAST, left));
    return widths;
  }

  private int widest(int column, ToIntFunction<String> width) {
    return Math.max(
        width.applyAsInt(heads[column]),
        rows.stream().mapToInt(r -> width.applyAsInt(r[column])).max().orElse(0));
  }

  /** Narrows the widest columns first, none below its longest word. */
  private static void giveWay(int[] widths, int[] least, int room) {
    while (Arrays.stream(widths).sum() > room) {
      int widest = -1;
      for (int i = 0; i < widths.length; i++) {
        if (widths[i] > least[i] && (widest < 0 || widths[i] > widths[widest])) {
          widest = i;
        }
      }
      if (widest < 0) {
        return;
      }
      widths[widest]--;
    }
  }

  private static int longestWord(String text) {
    return Arrays.stream(text.split(" ")).mapToInt(String::length).max().orElse(0);
  }

  private void row(StringBuilder text, String[] cells, int[] widths) {
    List<List<String>> folded = new ArrayList<>();
    int height = 1;
    for (int i = 0; i < cells.length; i++) {
      folded.add(fold(cells[i], widths[i]));
      height = Math.max(height, folded.get(i).size());
    }
    for (int n = 0; n < height; n++) {
      StringBuilder line = new StringBuilder();
      for (int i = 0; i < cells.length; i++) {
        List<String> lines = folded.get(i);
        line.append(GAP).append(padded(n < lines.size() ? lines.get(n) : "", widths[i], right[i]));
      }
      text.append(line.toString().stripTrailing()).append('\n');
    }
  }

  private static String padded(String cell, int width, boolean right) {
    String blanks = " ".repeat(Math.max(0, width - cell.length()));
    return right ? blanks + cell : cell + blanks;
  }

  /** A text without line breaks or anything else that would move a terminal's cursor. */
  private static String oneLine(String text) {
    return CONTROLS.matcher(text).replaceAll(" ");
  }

  /**
   * Breaks a text into lines of at most a width: at blanks, within a long word after a hyphen, and
   * anywhere only where there is neither.
   */
  public static List<String> fold(String text, int width) {
    List<String> lines = new ArrayList<>();
    String rest = oneLine(text).strip();
    while (rest.length() > width) {
      int cut = rest.lastIndexOf(' ', width);
      if (cut <= 0) {
        int hyphen = rest.lastIndexOf('-', width - 1);
        cut = hyphen > 0 ? hyphen + 1 : width;
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
