package charline.log.sheet;

import charline.trial.PlainText;
import java.util.Map;

/**
 * One line of a trial sheet, every cell as text.
 *
 * @param line where it starts in the file, the first line being 1
 * @param cells by heading; a column that the sheet leaves out is absent
 */
public record SheetRow(int line, Map<String, String> cells) {
  public SheetRow {
    cells = Map.copyOf(cells);
  }

  /** The cell as the person meant it. */
  String text(Column column) {
    return meant(column, cells.getOrDefault(column.heading(), ""));
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
