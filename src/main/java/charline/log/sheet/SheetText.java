package charline.log.sheet;

import charline.refusal.Refusal;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * The text of a CSV file cut into records, each with the line it starts on.
 *
 * <p>The cells are read by Tablesaw ({@link TextTable}). What it cannot do is done here, as {@code
 * TablesawLimitsTest} shows: it counts rows, so that after a blank line and a note of two lines its
 * "row 2" is line 5; it stops at the first row of another length, where all of them are to be
 * named; and a quote that never closes swallows the rest of the sheet without a word.
 *
 * @param name name of the sheet in messages
 * @param separator comma, semicolon or tab
 * @param body the file, its lines ending in LF
 * @param records those with anything in them, the headings first
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

  private static final String SEPARATORS = ",;\t";

  /** Reads a file in UTF-8, UTF-16 or Windows-1252; a byte order mark is dropped. */
  static SheetText read(Path file) {
    String name = String.valueOf(file.getFileName());
    if (Files.isDirectory(file)) {
      throw Refusal.usage(name + " is a folder; give a CSV file.");
    }
    try {
      return of(name, decoded(name, file));
    } catch (NoSuchFileException e) {
      throw Refusal.usage("There is no file %s; check its name and folder.".formatted(file), e);
    } catch (IOException e) {
      throw Refusal.data(
          "%s cannot be read (%s); check its permissions.".formatted(file, e.getMessage()), e);
    }
  }

  /** UTF-16 by its mark or its zero bytes, else UTF-8 where that fits, else Windows-1252. */
  private static String decoded(String name, Path file) throws IOException {
    byte[] bytes = Files.readAllBytes(file);
    int first = bytes.length > 0 ? bytes[0] & 0xff : 0;
    int second = bytes.length > 1 ? bytes[1] & 0xff : 0;
    if (first == 0xff && second == 0xfe
        || bytes.length > 3 && first > 0 && second == 0 && bytes[3] == 0) {
      return new String(bytes, StandardCharsets.UTF_16LE);
    }
    if (first == 0xfe && second == 0xff
        || bytes.length > 3 && first == 0 && second > 0 && bytes[2] == 0) {
      return new String(bytes, StandardCharsets.UTF_16BE);
    }
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      refuseBinary(name, new String(bytes, StandardCharsets.ISO_8859_1));
      return new String(bytes, Charset.forName("windows-1252"));
    }
  }

  /** Cuts a text into records. */
  static SheetText of(String name, String text) {
    refuseBinary(name, text);
    String body = text.startsWith("\uFEFF") ? text.substring(1) : text;
    body = body.replace("\r\n", "\n").replace('\r', '\n');
    if (body.isBlank()) {
      throw Refusal.data(
          name + " is empty; its first line must name the columns, such as patch,rig,board.");
    }
    char separator = separatorOf(body.stripLeading().lines().findFirst().orElseThrow());
    return new SheetText(name, separator, body, cut(name, body, separator));
  }

  /** The records again as one text that starts with the headings. */
  String text() {
    StringBuilder text = new StringBuilder(body.length() + 1);
    records.forEach(r -> text.append(body, r.from(), r.to()).append('\n'));
    return text.toString();
  }

  private static void refuseBinary(String name, String text) {
    boolean zip = text.startsWith("PK\u0003\u0004");
    if (zip || text.chars().anyMatch(c -> c < ' ' && c != '\n' && c != '\r' && c != '\t')) {
      throw Refusal.data(
          name + " is not plain text; if it is a spreadsheet, save it as CSV in UTF-8.");
    }
  }

  private static char separatorOf(String headings) {
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

  private static List<Record> cut(String name, String body, char separator) {
    List<Record> records = new ArrayList<>();
    int line = 1;
    int start = 0;
    int startLine = 1;
    int cells = 1;
    int quotedSince = 0;
    boolean cellBegun = false;
    for (int i = 0; i <= body.length(); i++) {
      char c = i < body.length() ? body.charAt(i) : '\n';
      if (quotedSince > 0 && i < body.length()) {
        if (c == '"') {
          if (i + 1 < body.length() && body.charAt(i + 1) == '"') {
            i++;
          } else {
            quotedSince = 0;
          }
        } else if (c == '\n') {
          line++;
        }
      } else if (quotedSince > 0) {
        throw Refusal.data(
            "A quote that opens on line %d of %s is never closed; close it or remove it."
                .formatted(quotedSince, name));
      } else if (c == '\n') {
        if (hasContent(body, start, i, separator)) {
          records.add(new Record(startLine, cells, start, i));
        }
        line++;
        start = i + 1;
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
    }
    return List.copyOf(records);
  }
}
