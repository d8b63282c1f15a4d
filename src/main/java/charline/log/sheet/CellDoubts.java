package charline.log.sheet;

import charline.trial.Plausibility.Doubt;
import java.util.List;
import java.util.Optional;

/**
 * Doubtful values of a sheet, which are faults unless the person is sure of them.
 *
 * @param hint how the person says that they are sure; empty if they did
 */
record CellDoubts(Faults faults, Optional<String> hint) {
  /** Doubts about a row, each reported at its own column where the sheet has one. */
  void report(SheetRow row, List<Doubt> doubts) {
    doubts.forEach(doubt -> report(row, Column.of(doubt.knob()), doubt));
  }

  /** Doubts about a line as a whole. */
  void report(int line, List<Doubt> doubts) {
    hint.ifPresent(sure -> doubts.forEach(doubt -> faults.add(line, doubt.sentence(sure))));
  }

  /** Doubts about one cell. */
  void report(SheetRow row, Column column, List<Doubt> doubts) {
    doubts.forEach(doubt -> report(row, column, doubt));
  }

  private void report(SheetRow row, Column column, Doubt doubt) {
    if (column == null) {
      report(row.line(), List.of(doubt));
    } else {
      report(row.line(), column, row.text(column), doubt);
    }
  }

  /** A doubt about a cell whose row is gone. */
  void report(int line, Column column, String text, Doubt doubt) {
    hint.map(doubt::sentence)
        .ifPresent(sentence -> faults.add(line, column.heading(), text, sentence));
  }
}
