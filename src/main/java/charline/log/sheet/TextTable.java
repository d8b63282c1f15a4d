package charline.log.sheet;

import charline.refusal.Refusal;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import tech.tablesaw.api.ColumnType;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;
import tech.tablesaw.io.csv.CsvReadOptions;

/** Records of a CSV file as a table whose cells are all text, with the line of each row. */
final class TextTable {
  private final String name;
  private final List<String> headings = new ArrayList<>();
  private final List<StringColumn> columns = new ArrayList<>();
  private final List<String> units = new ArrayList<>();
  private final Map<String, StringColumn> forNotes = new LinkedHashMap<>();
  private final int[] lines;
  private boolean strayCells;

  private TextTable(SheetText text, Headings head) {
    name = text.name();
    Table table = parse(text, head.given().size());
    boolean withHead = text.records().get(0).line() == head.line();
    Table rows = withHead ? table.dropRange(1) : table;
    lines =
        text.records().stream().skip(withHead ? 1 : 0).mapToInt(SheetText.Record::line).toArray();
    List<String> names = head.names();
    for (int i = 0; i < names.size(); i++) {
      StringColumn column = rows.stringColumn(i);
      if (names.get(i).isEmpty()) {
        strayCells |= column.asList().stream().anyMatch(cell -> !cell.isBlank());
      } else if (head.isForNotes(i)) {
        forNotes.put(head.given().get(i), column);
      } else if (!head.isLeftOut(i)) {
        headings.add(names.get(i));
        columns.add(column);
        units.add(head.unit(i));
      }
    }
  }

  /**
   * Reads a whole sheet under known headings.
   *
   * @param text the file
   * @param known headings that may be there, lower case
   * @param needed headings that must be there
   * @throws Refusal if the first line names no known heading, a heading is unknown, missing or is
   *     there twice, a line has too many or too few cells, or there is no line under the headings
   */
  static TextTable read(SheetText text, List<String> known, List<String> needed) {
    Headings head = Headings.of(text, known, needed);
    Faults shape = new Faults(text.name());
    addRagged(text, head, shape);
    shape.refuseIfAny();
    return read(text, head);
  }

  /** Reads a whole sheet whose records all have as many cells as there are headings. */
  static TextTable read(SheetText text, Headings head) {
    TextTable table = new TextTable(text, head);
    Faults faults = new Faults(text.name());
    table.addStrayCells(head, faults);
    head.addTo(faults);
    faults.refuseIfAny();
    if (table.rowCount() == 0) {
      throw noLines(text.name());
    }
    return table;
  }

  /** Reads a block of a sheet whose headings are good. */
  static TextTable ofBlock(SheetText block, Headings head) {
    TextTable table = new TextTable(block, head);
    Faults faults = new Faults(block.name());
    table.addStrayCells(head, faults);
    faults.refuseIfAny();
    return table;
  }

  static Refusal noLines(String name) {
    return Refusal.data(
        name + " has column names but no lines under them; there is nothing to import.");
  }

  /** Adds the records that have more or fewer cells than there are headings. */
  static void addRagged(SheetText text, Headings head, Faults faults) {
    int columns = head.given().size();
    for (SheetText.Record r : text.records()) {
      if (r.cells() != columns) {
        faults.add(
            r.line(),
            "It has %d cells under %d column names; check its separators and quotes."
                .formatted(r.cells(), columns));
      }
    }
  }

  private void addStrayCells(Headings head, Faults faults) {
    if (strayCells) {
      faults.add(head.line(), "A column with cells has no name; name it or empty it.");
    }
  }

  private static Table parse(SheetText text, int columns) {
    ColumnType[] types = new ColumnType[columns];
    Arrays.fill(types, ColumnType.STRING);
    Table table =
        Table.read()
            .usingOptions(
                CsvReadOptions.builder(new StringReader(text.text()))
                    .header(false)
                    .columnTypes(types)
                    .separator(text.separator())
                    .lineEnding("\n")
                    .missingValueIndicator("") // otherwise a person called NA would vanish
                    .commentPrefix('\0') // otherwise a patch called #12 would
                    .maxCharsPerColumn(SheetText.LONGEST_RECORD)
                    .maxNumberOfColumns(Math.max(columns, 1))
                    .build());
    if (table.rowCount() != text.records().size()) {
      throw Refusal.data(
          "The quotes in %s do not pair up; double every quote inside a cell."
              .formatted(text.name()));
    }
    return table;
  }

  String name() {
    return name;
  }

  int rowCount() {
    return lines.length;
  }

  /** One cell of a row, counted from 0; empty where there is no such column. */
  String cell(int row, String heading) {
    int column = headings.indexOf(heading);
    return column < 0 ? "" : columns.get(column).get(row);
  }

  /** One row, counted from 0. */
  SheetRow row(int index) {
    Map<String, String> cells = new HashMap<>();
    for (int i = 0; i < columns.size(); i++) {
      String cell = columns.get(i).get(index);
      String unit = units.get(i);
      cells.put(headings.get(i), unit.isEmpty() || !SheetNumbers.isBare(cell) ? cell : cell + unit);
    }
    if (!forNotes.isEmpty()) {
      cells.merge(
          Column.NOTE.heading(),
          noted(index),
          (a, b) -> a.isBlank() || b.isBlank() ? a + b : a + "; " + b);
    }
    return new SheetRow(lines[index], cells);
  }

  /** "lens temp: 31; helper: Bo". */
  private String noted(int index) {
    return forNotes.entrySet().stream()
        .filter(e -> !e.getValue().get(index).isBlank())
        .map(e -> e.getKey() + ": " + FormulaGuard.undo(e.getValue().get(index)).strip())
        .collect(Collectors.joining("; "));
  }

  List<SheetRow> rows() {
    return IntStream.range(0, rowCount()).mapToObj(this::row).toList();
  }

  /** The headings that the sheet has, in its order. */
  List<String> headings() {
    return List.copyOf(headings);
  }
}
