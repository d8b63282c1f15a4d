package charline.log.sheet;

import charline.refusal.Refusal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * The text of a CSV file, or of a block of it, cut into records, each with the line it starts on.
 *
 * <p>The cells are read by Tablesaw ({@link TextTable}). What it cannot do is done here, as {@code
 * TablesawLimitsTest} shows: it counts rows, so that after a blank line and a note of two lines its
 * "row 2" is line 5; it stops at the first row of another length, where all of them are to be
 * named; and a quote that never closes swallows the rest of the sheet without a word.
 *
 * @param name name of the sheet in messages
 * @param separator comma, semicolon or tab
 * @param body the text, its lines ending in LF
 * @param records those with anything in them
 */
record SheetText(String name, char separator, String body, List<Record> records) {
  /**
   * One record.
   *
   * @param line where it starts, the first line being 1
   * @param cells how many it has
   * @param from where it starts in the body
   * @param to where it ends, without its line end
   */
  record Record(int line, int cells, int from, int to) {}

  /**
   * What was cut from a text.
   *
   * @param records those that are whole
   * @param end where the first one begins that is not
   * @param nextLine the line that it starts on
   */
  record Cut(List<Record> records, int end, int nextLine) {}

  /** Longest record, in characters. */
  static final int LONGEST_RECORD = 1_000_000;

  /** Longest sheet that is read whole, in characters: rigs, power checks, samples. */
  private static final int LONGEST_WHOLE = 16 << 20;

  private static final String SEPARATORS = ",;\t";

  /** Reads a small sheet whole; a byte order mark is dropped. */
  static SheetText read(Path file) {
    return whole(SheetSource.of(file));
  }

  /** Cuts a text into records. */
  static SheetText of(String name, String text) {
    return whole(SheetSource.of(name, text));
  }

  private static SheetText whole(SheetSource source) {
    try (SheetBlocks blocks = new SheetBlocks(source, LONGEST_WHOLE)) {
      SheetText text = blocks.next().orElseThrow();
      if (!blocks.isOver()) {
        throw Refusal.data(
            "%s must be at most %d MB, as it is read whole; give a shorter one."
                .formatted(source.name(), LONGEST_WHOLE >> 20));
      }
      return text;
    }
  }

  /** The records again as one text that starts with the headings. */
  String text() {
    StringBuilder text = new StringBuilder(body.length() + 1);
    records.forEach(r -> text.append(body, r.from(), r.to()).append('\n'));
    return text.toString();
  }

  /** A cell of a record, counted from 0, without its quotes. */
  String cell(Record of, int column) {
    int at = of.from();
    for (int i = 0; ; i++) {
      int end = cellEnd(at, of.to());
      if (i == column) {
        String cell = body.substring(at, end).strip();
        return cell.length() > 1 && cell.startsWith("\"")
            ? cell.substring(1, cell.length() - 1).replace("\"\"", "\"")
            : cell;
      }
      at = end + 1;
    }
  }

  private int cellEnd(int from, int to) {
    boolean quoted = false;
    boolean begun = false;
    for (int i = from; i < to; i++) {
      char c = body.charAt(i);
      if (c == '"' && (quoted || !begun)) {
        quoted = !quoted; // a doubled one closes and opens again
        begun = true;
      } else if (c == separator && !quoted) {
        return i;
      } else if (!Character.isWhitespace(c)) {
        begun = begun || !quoted;
      }
    }
    return to;
  }

  static boolean isBinary(char c) {
    return c < ' ' && c != '\n' && c != '\r' && c != '\t';
  }

  static Refusal binary(String name) {
    return Refusal.data(
        name + " is not plain text; if it is a spreadsheet, save it as CSV in UTF-8.");
  }

  static char separatorOf(String headings) {
    char best = ',';
    long most = 0;
    for (char c : SEPARATORS.toCharArray()) {
      long count = headings.chars().filter(x -> x == c).count();
      if (count > most) {
        most = count;
        best = c;
      }
    }
    return best;
  }

  private static boolean hasContent(String body, int from, int to, char separator) {
    for (int i = from; i < to; i++) {
      char c = body.charAt(i);
      if (c != separator && !Character.isWhitespace(c)) {
        return true;
      }
    }
    return false;
  }

  /**
   * Cuts a text into records.
   *
   * @param firstLine the line that it starts on
   * @param toTheEnd false if more text follows
   */
  static Cut cut(String name, String body, char separator, int firstLine, boolean toTheEnd) {
    List<Record> records = new ArrayList<>();
    int line = firstLine;
    int start = 0;
    int startLine = line;
    int cells = 1;
    int quotedSince = 0;
    boolean cellBegun = false;
    int end = toTheEnd ? body.length() : body.length() - 1;
    for (int i = 0; i <= end; i++) {
      char c = i < body.length() ? body.charAt(i) : '\n';
      if (quotedSince > 0 && i < body.length()) {
        if (c == '"') {
          if (i + 1 < body.length() && body.charAt(i + 1) == '"') {
            i++;
          } else if (i + 1 < body.length() || toTheEnd) {
            quotedSince = 0;
          }
        } else if (c == '\n') {
          line++;
        }
      } else if (quotedSince > 0) {
        throw unclosed(name, quotedSince);
      } else if (c == '\n') {
        if (hasContent(body, start, i, separator)) {
          records.add(new Record(startLine, cells, start, i));
        }
        line++;
        start = Math.min(i + 1, body.length());
        startLine = line;
        cells = 1;
        cellBegun = false;
      } else if (c == separator) {
        cells++;
        cellBegun = false;
      } else if (c == '"' && !cellBegun) {
        quotedSince = line;
        cellBegun = true;
      } else if (!Character.isWhitespace(c)) {
        cellBegun = true;
      }
      if (i - start > LONGEST_RECORD) {
        throw quotedSince > 0
            ? unclosed(name, quotedSince)
            : Refusal.data(
                "Line %d of %s is longer than %d characters; check its quotes and line ends."
                    .formatted(startLine, name, LONGEST_RECORD));
      }
    }
    return new Cut(List.copyOf(records), start, startLine);
  }

  private static Refusal unclosed(String name, int line) {
    return Refusal.data(
        "A quote that opens on line %d of %s is never closed; close it or remove it."
            .formatted(line, name));
  }
}
