package charline.log.sheet;

import java.io.IOException;
import java.io.Reader;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.Spliterator;
import java.util.Spliterators;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;

/**
 * A trial sheet as it was read: every cell text, nothing guessed, nothing looked up yet.
 *
 * <p>The separator may be a comma, a semicolon or a tab; columns may come in any order, with
 * headings in any case. Lines without anything in them are passed over.
 */
public final class TrialSheet {
  /** A block of some 10,000 lines. */
  private static final int BLOCK_CHARACTERS = 1 << 20;

  private final SheetSource source;
  private final int blockCharacters;
  private final Headings head;
  private final char separator;
  private final PatchLines lines = new PatchLines();
  private final int lineCount;

  /** The sheet itself if it is one block. */
  private final Optional<TextTable> small;

  private TrialSheet(SheetSource source, int blockCharacters, SheetManner manner) {
    this.source = source;
    this.blockCharacters = blockCharacters;
    try (SheetBlocks blocks = new SheetBlocks(source, blockCharacters)) {
      SheetText first = blocks.next().orElseThrow();
      separator = first.separator();
      head =
          Headings.of(
              first,
              Column.headings(),
              Column.NEEDED.stream().map(Column::heading).toList(),
              manner);
      Faults shape = new Faults(source.name());
      int code = head.names().indexOf(Column.PATCH.heading());
      int[] times = {
        head.names().indexOf(Column.BURNED_AT.heading()),
        head.names().indexOf(Column.READ_AT.heading())
      };
      UnclearDates unclear = new UnclearDates();
      boolean one = blocks.isOver();
      int rows = -1;
      for (Optional<SheetText> block = Optional.of(first);
          block.isPresent();
          block = blocks.next()) {
        TextTable.addRagged(block.get(), head, shape);
        if (shape.count() == 0) {
          count(block.get(), code);
          if (manner.dates() == DateOrder.UNKNOWN) {
            look(block.get(), times, unclear);
          }
        }
        rows += block.get().records().size();
      }
      shape.refuseIfAny();
      small = one ? Optional.of(TextTable.read(first, head)) : Optional.empty();
      Faults names = new Faults(source.name());
      head.addTo(names);
      names.refuseIfAny();
      unclear.refuseIfAny(source.name());
      lineCount = rows;
      if (rows == 0) {
        throw TextTable.noLines(source.name());
      }
    }
  }

  private void look(SheetText block, int[] columns, UnclearDates unclear) {
    for (SheetText.Record of : block.records()) {
      for (int column : columns) {
        if (column >= 0 && of.line() != head.line()) {
          unclear.look(of.line(), SheetRow.meant(Column.BURNED_AT, block.cell(of, column)));
        }
      }
    }
  }

  private void count(SheetText block, int codeColumn) {
    for (SheetText.Record of : block.records()) {
      if (of.line() != head.line()) {
        lines.add(codeColumn < 0 ? "" : SheetRow.meant(Column.PATCH, block.cell(of, codeColumn)));
      }
    }
  }

  /**
   * Reads a file.
   *
   * @throws charline.refusal.Refusal in one sentence if it is missing, empty, not text or not a
   *     trial sheet
   */
  public static TrialSheet read(Path file) {
    return read(file, SheetManner.PLAIN);
  }

  /** Reads a file that was laid out by a person, as {@link #read(Path)} otherwise. */
  public static TrialSheet read(Path file, SheetManner manner) {
    return new TrialSheet(SheetSource.of(file), BLOCK_CHARACTERS, manner);
  }

  /** Reads what a reader gives, to its end; as {@link #read(Path)} otherwise. */
  public static TrialSheet read(Reader reader) {
    return read(reader, BLOCK_CHARACTERS);
  }

  static TrialSheet read(Reader reader, int blockCharacters) {
    return new TrialSheet(
        SheetSource.of("the trial sheet", all(reader)), blockCharacters, SheetManner.PLAIN);
  }

  static TrialSheet read(Reader reader, SheetManner manner) {
    return new TrialSheet(SheetSource.of("the trial sheet", all(reader)), BLOCK_CHARACTERS, manner);
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
    return source.name();
  }

  /** What became of the columns that are not charline's own. */
  public SheetColumns columns() {
    return head.columns();
  }

  /** How its dates in figures begin. */
  DateOrder dates() {
    return head.manner().dates();
  }

  /** Comma, semicolon or tab. */
  char separator() {
    return separator;
  }

  /** How many lines are under the headings. */
  int lineCount() {
    return lineCount;
  }

  boolean hasColumn(Column column) {
    return head.names().contains(column.heading());
  }

  /** The lines in the order of the sheet. */
  public List<SheetRow> rows() {
    if (small.isPresent()) {
      return small.get().rows();
    }
    List<SheetRow> all = new ArrayList<>();
    try (BlockRows rows = new BlockRows(new SheetBlocks(source, blockCharacters), head)) {
      rows.forEachRemaining(all::add);
    }
    return all;
  }

  /**
   * The lines of each patch, both in the order of the sheet. Lines with the same code, in whichever
   * case, belong together; a line without a code is a patch of its own. Lines are read as they are
   * asked for, as a large sheet has many; close the stream.
   *
   * <p>Grouped here and not by Tablesaw: 100,000 lines of two each took its {@code splitOn} four
   * times as long and more than three times the memory, a bitmap for every patch.
   */
  Stream<List<SheetRow>> patches() {
    if (small.isPresent()) {
      return streamed(small.get().rows().iterator());
    }
    BlockRows rows = new BlockRows(new SheetBlocks(source, blockCharacters), head);
    return streamed(rows).onClose(rows::close);
  }

  private Stream<List<SheetRow>> streamed(Iterator<SheetRow> rows) {
    return StreamSupport.stream(
        Spliterators.spliteratorUnknownSize(
            new PatchGroups(rows, lines.left()), Spliterator.ORDERED),
        false);
  }
}
