package charline.log.sheet;

import charline.log.reference.Nearest;
import charline.log.sheet.SheetManner.Extra;
import charline.refusal.Refusal;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import tech.tablesaw.api.ColumnType;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;
import tech.tablesaw.io.csv.CsvReadOptions;

/**
 * A CSV file as a table whose cells are all text, with the line of each row.
 *
 * @param name name of the sheet in messages
 * @param table one text column per heading, and {@link #LINE}
 */
record TextTable(String name, Table table) {
  /** Column that holds the line a row starts on; no heading can have this name. */
  static final String LINE = "#line";

  /** Before the name of a column that is not known. */
  private static final String EXTRA = "#extra ";

  /** Letters of a first line that a message repeats. */
  private static final int LONGEST_READ = 80;

  /**
   * Reads records under known headings.
   *
   * @param text the file
   * @param known headings that may stand, lower case
   * @param needed headings that must stand
   * @throws Refusal if the first line names no known heading, a heading is unknown, missing or
   *     stands twice, a line has too many or too few cells, or there is no line under the headings
   */
  static TextTable read(SheetText text, List<String> known, List<String> needed) {
    return read(text, known, needed, SheetManner.STRICT);
  }

  /**
   * The same of a sheet that may have more columns.
   *
   * @param manner what becomes of them
   */
  static TextTable read(
      SheetText text, List<String> known, List<String> needed, SheetManner manner) {
    List<SheetText.Record> records = text.records();
    refuseOtherFirstLine(text, known, needed);
    Faults shape = new Faults(text.name());
    int columns = records.get(0).cells();
    for (SheetText.Record r : records) {
      if (r.cells() != columns) {
        shape.add(
            r.line(),
            "It has %d cells under %d column names; check its separators and quotes."
                .formatted(r.cells(), columns));
      }
    }
    shape.refuseIfAny();
    Table table = parse(text, columns);
    name(table, text, known, needed, manner);
    Table rows = table.dropRange(1);
    if (rows.isEmpty()) {
      throw Refusal.data(
          text.name() + " has column names but no lines under them; there is nothing to import.");
    }
    return new TextTable(text.name(), rows);
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
                    .maxCharsPerColumn(1_000_000)
                    .maxNumberOfColumns(Math.max(columns, 1))
                    .build());
    if (table.rowCount() != text.records().size()) {
      throw Refusal.data(
          "The quotes in %s do not pair up; double every quote inside a cell."
              .formatted(text.name()));
    }
    return table;
  }

  /** Gives each column its heading from the first row; drops those without one that are empty. */
  private static void name(
      Table table, SheetText text, List<String> known, List<String> needed, SheetManner manner) {
    Faults faults = new Faults(text.name());
    int line = text.records().get(0).line();
    Set<String> seen = new HashSet<>();
    List<String> strange = new ArrayList<>();
    for (StringColumn column : List.copyOf(Arrays.asList(table.stringColumns()))) {
      String given = column.get(0).strip();
      String heading = given.toLowerCase(Locale.ROOT);
      if (heading.isEmpty()) {
        if (column.asList().stream().allMatch(String::isBlank)) {
          table.removeColumns(column);
        } else {
          faults.add(line, "A column with cells has no name; name it or empty it.");
        }
      } else if (!known.contains(heading) && manner.extra() != Extra.REFUSE) {
        column.setName(EXTRA + given);
      } else if (!known.contains(heading)) {
        List<String> near = Nearest.to(heading, known);
        if (near.isEmpty()) {
          strange.add("\"%s\"".formatted(given));
        } else {
          faults.add(
              line,
              "There is no column \"%s\"; nearest: %s.".formatted(given, String.join(", ", near)));
        }
      } else if (!seen.add(heading)) {
        faults.add(line, "Column %s is there twice; keep one.".formatted(heading));
      } else {
        column.setName(heading);
      }
    }
    if (!strange.isEmpty()) {
      faults.add(
          line,
          "There %s %s; the columns are %s."
              .formatted(
                  strange.size() == 1 ? "is no column" : "are no columns",
                  String.join(", ", strange),
                  String.join(", ", known)));
    }
    List<String> missing = needed.stream().filter(h -> !seen.contains(h)).toList();
    if (!missing.isEmpty()) {
      faults.add(
          line,
          "Column%s %s %s missing; every sheet needs %s."
              .formatted(
                  missing.size() == 1 ? "" : "s",
                  String.join(", ", missing),
                  missing.size() == 1 ? "is" : "are",
                  String.join(", ", needed)));
    }
    faults.refuseIfAny();
    table.addColumns(
        IntColumn.create(LINE, text.records().stream().mapToInt(SheetText.Record::line).toArray()));
  }

  /** A title above the columns, or columns named in another language, is best told in one go. */
  private static void refuseOtherFirstLine(
      SheetText text, List<String> known, List<String> needed) {
    SheetText.Record first = text.records().get(0);
    List<String> cells =
        Arrays.stream(text.body().substring(first.from(), first.to()).split("[,;\\t\n]"))
            .map(cell -> cell.replace("\"", "").strip())
            .filter(cell -> !cell.isEmpty())
            .toList();
    if (cells.stream().noneMatch(c -> known.contains(c.toLowerCase(Locale.ROOT)))) {
      String read = String.join(", ", cells);
      throw Refusal.data(
          "Line %d of %s must name the columns, not read \"%s\"; remove any title above the names, and name at least %s, of %s."
              .formatted(
                  first.line(),
                  text.name(),
                  read.length() > LONGEST_READ ? read.substring(0, LONGEST_READ) + "..." : read,
                  String.join(", ", needed),
                  String.join(", ", known)));
    }
  }

  int rowCount() {
    return table.rowCount();
  }

  /** One cell of a row, counted from 0; empty where there is no such column. */
  String cell(int row, String heading) {
    return table.containsColumn(heading) ? table.stringColumn(heading).get(row) : "";
  }

  /** Headings of columns that are not known, as they stand in the sheet. */
  List<String> extras() {
    return table.columnNames().stream()
        .filter(n -> n.startsWith(EXTRA))
        .map(n -> n.substring(EXTRA.length()))
        .toList();
  }

  /**
   * The same with the cells of unknown columns in a column of notes: "heading: cell".
   *
   * @param heading of the notes, which need not be there yet
   */
  TextTable withExtrasIn(String heading) {
    if (!table.containsColumn(heading)) {
      table.addColumns(
          StringColumn.create(heading, IntStream.range(0, rowCount()).mapToObj(i -> "").toList()));
    }
    StringColumn notes = table.stringColumn(heading);
    for (String extra : extras()) {
      StringColumn cells = table.stringColumn(EXTRA + extra);
      for (int i = 0; i < rowCount(); i++) {
        if (!cells.get(i).isBlank()) {
          String said = extra + ": " + cells.get(i).strip();
          notes.set(i, notes.get(i).isBlank() ? said : notes.get(i) + "; " + said);
        }
      }
    }
    return this;
  }

  /** The same with the days of a column the year first, if it is there. */
  TextTable withYearsFirst(String heading, SheetManner manner) {
    if (table.containsColumn(heading)) {
      StringColumn column = table.stringColumn(heading);
      List<String> cells = DatesInFigures.yearFirst(name, heading, column.asList(), manner.dates());
      for (int i = 0; i < cells.size(); i++) {
        column.set(i, cells.get(i));
      }
    }
    return this;
  }

  /** One row, counted from 0. */
  SheetRow row(int index) {
    Map<String, String> cells = new HashMap<>();
    for (StringColumn column : table.stringColumns()) {
      cells.put(column.name(), column.get(index));
    }
    return new SheetRow(table.intColumn(LINE).get(index), cells);
  }

  List<SheetRow> rows() {
    return IntStream.range(0, rowCount()).mapToObj(this::row).toList();
  }

  /** The headings that the sheet has, in its order. */
  List<String> headings() {
    return table.columnNames().stream().filter(n -> !n.startsWith("#")).toList();
  }
}
