package charline.log.sheet;

import charline.quantity.Measure;
import charline.quantity.Measure.Quantity;
import charline.refusal.Refusal;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Cells of the sheets that rigs are set up from, by the name of a rig. */
final class RigCells {
  private RigCells() {}

  /** A cell was named to the faults; the rest of its row is passed over. */
  static final class BadCell extends RuntimeException {
    private static final long serialVersionUID = 1L;
  }

  static <T> T need(SheetRow row, String heading, Function<String, T> reader, Faults faults) {
    String cell = cell(row, heading);
    try {
      return reader.apply(cell);
    } catch (Refusal e) {
      faults.add(row.line(), heading, cell, e.getMessage());
      e.missing().ifPresent(faults::lack);
      throw new BadCell();
    }
  }

  static OptionalDouble number(SheetRow row, String heading, Quantity quantity, Faults faults) {
    return cell(row, heading).isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(need(row, heading, t -> Measure.parse(t, quantity).value(), faults));
  }

  /** Rigs whose names differ in capitals alone are one. */
  static String key(String name) {
    return name.toLowerCase(Locale.ROOT);
  }

  static String name(SheetRow row) {
    return FormulaGuard.undo(cell(row, "rig")).strip();
  }

  static String cell(SheetRow row, String heading) {
    return row.cells().getOrDefault(heading, "").strip();
  }

  /** Whether a row is of a rig that is not listed; then that is named as a fault. */
  static boolean isOfNoRig(
      SheetRow row, String rigSheet, Map<String, SheetRow> named, Faults faults) {
    String rig = name(row);
    if (named.containsKey(key(rig))) {
      return false;
    }
    faults.add(
        row.line(),
        "rig",
        rig,
        "There is no such rig in %s; it has %s."
            .formatted(
                rigSheet,
                named.values().stream().map(RigCells::name).collect(Collectors.joining(", "))));
    return true;
  }
}
