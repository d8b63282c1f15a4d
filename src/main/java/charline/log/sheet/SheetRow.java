package charline.log.sheet;

import charline.trial.PlainText;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/** One line of a sheet, every cell as text. */
public final class SheetRow {
  private final int line;
  private final Map<String, String> cells;

  /** What was asked of them so far: each is asked for several times. */
  private final Map<Column, String> texts = new EnumMap<>(Column.class);

  /**
   * @param line where it starts in the file, the first line being 1
   * @param cells by heading; a column that the sheet leaves out is absent
   */
  SheetRow(int line, Map<String, String> cells) {
    this.line = line;
    this.cells = Collections.unmodifiableMap(cells);
  }

  int line() {
    return line;
  }

  Map<String, String> cells() {
    return cells;
  }

  /** The cell as the person meant it. */
  String text(Column column) {
    String known = texts.get(column);
    if (known == null) {
      known = meant(column, cells.getOrDefault(column.heading(), ""));
      texts.put(column, known);
    }
    return known;
  }

  /**
   * A cell as the person meant it: formula guard and unseen characters taken off, blanks trimmed
   * except in prose.
   */
  static String meant(Column column, String cell) {
    String bare = PlainText.of(column.isPersonal() ? FormulaGuard.undo(cell) : cell);
    if (column.isProse()) {
      return bare.isBlank() ? "" : bare;
    }
    return bare.strip();
  }

  boolean has(Column column) {
    return !text(column).isEmpty();
  }
}
