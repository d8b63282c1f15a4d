package charline.log.sheet;

import java.io.IOException;
import java.io.Reader;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A trial sheet as it was read: every cell text, nothing guessed, nothing looked up yet.
 *
 * <p>The separator may be a comma, a semicolon or a tab; columns may come in any order, with
 * headings in any case. Lines without anything in them are passed over.
 */
public final class TrialSheet {
  private final TextTable text;
  private final char separator;

  private TrialSheet(SheetText sheet, SheetManner manner) {
    TextTable read =
        TextTable.read(
                sheet,
                Column.headings(),
                Column.NEEDED.stream().map(Column::heading).toList(),
                manner)
            .withYearsFirst(Column.BURNED_AT.heading(), manner)
            .withYearsFirst(Column.READ_AT.heading(), manner);
    this.text =
        manner.extra() == SheetManner.Extra.NOTE && !read.extras().isEmpty()
            ? read.withExtrasIn(Column.NOTE.heading())
            : read;
    this.separator = sheet.separator();
  }

  /**
   * Reads a file.
   *
   * @throws charline.refusal.Refusal in one sentence if it is missing, empty, not text or not a
   *     trial sheet
   */
  public static TrialSheet read(Path file) {
    return read(file, SheetManner.STRICT);
  }

  /** Reads a file that may not be as charline writes them. */
  public static TrialSheet read(Path file, SheetManner manner) {
    return new TrialSheet(SheetText.read(file), manner);
  }

  /** Headings that charline does not know and did not refuse, as they stand in the sheet. */
  public List<String> extras() {
    return text.extras();
  }

  /** Reads what a reader gives, to its end; as {@link #read(Path)} otherwise. */
  public static TrialSheet read(Reader reader) {
    return new TrialSheet(SheetText.of("the trial sheet", all(reader)), SheetManner.STRICT);
  }

  static String all(Reader reader) {
    StringWriter all = new StringWriter();
    try {
      reader.transferTo(all);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return all.toString();
  }

  /** Name of the sheet in messages. */
  String name() {
    return text.name();
  }

  /** Comma, semicolon or tab. */
  char separator() {
    return separator;
  }

  boolean hasColumn(Column column) {
    return text.headings().contains(column.heading());
  }

  /** The lines in the order of the sheet. */
  public List<SheetRow> rows() {
    return text.rows();
  }

  /**
   * The lines of each patch, both in the order of the sheet. Lines with the same code, in whichever
   * case, belong together; a line without a code is a patch of its own. Lines are made as they are
   * asked for, as a large sheet has many.
   *
   * <p>Grouped here and not by Tablesaw: 100,000 lines of two each took its {@code splitOn} four
   * times as long and more than three times the memory, a bitmap for every patch.
   */
  Stream<List<SheetRow>> patches() {
    Map<String, List<Integer>> lines = new LinkedHashMap<>();
    for (int i = 0; i < text.rowCount(); i++) {
      String code = code(i);
      lines
          .computeIfAbsent(
              code.isEmpty() ? "line " + i : "code " + code.toLowerCase(Locale.ROOT),
              group -> new ArrayList<>(1))
          .add(i);
    }
    return lines.values().stream().map(of -> of.stream().map(text::row).toList());
  }

  boolean hasPatchesWithoutCode() {
    return IntStream.range(0, text.rowCount()).anyMatch(i -> code(i).isEmpty());
  }

  private String code(int row) {
    return SheetRow.meant(Column.PATCH, text.cell(row, Column.PATCH.heading()));
  }
}
