package charline.log.sheet;

import charline.refusal.Missing;
import charline.refusal.Refusal;
import java.util.ArrayList;
import java.util.List;

/** Collects everything wrong with a sheet, so that it can be put right in one go. */
final class Faults {
  private static final int SHOWN = 20;

  private record Fault(int line, String text) {}

  private final String sheet;
  private final List<Fault> faults = new ArrayList<>();
  private Missing lacking;

  Faults(String sheet) {
    this.sheet = sheet;
  }

  /** A wrong cell: line, column, its text, and a sentence. */
  void add(int line, String column, String value, String sentence) {
    String cell = value.isBlank() ? "(empty)" : "\"" + shortened(value) + "\"";
    faults.add(new Fault(line, "line %d, %s %s: %s".formatted(line, column, cell, sentence)));
  }

  void add(SheetRow row, Column column, String sentence) {
    add(row.line(), column.heading(), row.text(column), sentence);
  }

  /** Something wrong with a line as a whole. */
  void add(int line, String sentence) {
    faults.add(new Fault(line, "line %d: %s".formatted(line, sentence)));
  }

  /** Notes what a person may say to put the faults right. */
  void lack(Missing what) {
    lacking = what;
  }

  int count() {
    return faults.size();
  }

  /** Refuses with the first faults in the order of the sheet; does nothing if there are none. */
  void refuseIfAny() {
    if (faults.isEmpty()) {
      return;
    }
    StringBuilder message =
        new StringBuilder(
            "Nothing was imported: %s must be corrected."
                .formatted(
                    faults.size() == 1
                        ? "one place in " + sheet
                        : faults.size() + " places in " + sheet));
    List<Fault> inOrder =
        faults.stream().sorted((a, b) -> Integer.compare(a.line(), b.line())).toList();
    inOrder.stream().limit(SHOWN).forEach(f -> message.append("\n  ").append(f.text()));
    if (faults.size() > SHOWN) {
      message.append("\n  and ").append(faults.size() - SHOWN).append(" more");
    }
    throw lacking == null
        ? Refusal.data(message.toString())
        : Refusal.data(lacking, message.toString());
  }

  private static String shortened(String value) {
    String oneLine = value.strip().replaceAll("\\s+", " ");
    return oneLine.length() <= 60 ? oneLine : oneLine.substring(0, 57) + "...";
  }
}
