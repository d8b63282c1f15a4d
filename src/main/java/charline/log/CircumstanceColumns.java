package charline.log;

import charline.log.database.ResultRow;
import charline.log.database.RowValues;
import charline.trial.Circumstances;
import charline.trial.Knob;
import java.sql.SQLException;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** How a pass was made, or usually is, as columns: each is called as on a trial sheet. */
final class CircumstanceColumns {
  private CircumstanceColumns() {}

  /** Puts the values of these knobs; a column of which nothing is known is null. */
  static RowValues put(RowValues row, List<Knob> knobs, Circumstances circumstances) {
    Map<Knob, Object> values = circumstances.values();
    knobs.forEach(knob -> row.put(knob.column(), values.get(knob)));
    return row;
  }

  static Circumstances read(ResultRow row, List<Knob> knobs) throws SQLException {
    Map<Knob, Object> values = new EnumMap<>(Knob.class);
    for (Knob knob : knobs) {
      value(row, knob).ifPresent(value -> values.put(knob, value));
    }
    return Circumstances.of(values);
  }

  private static Optional<Object> value(ResultRow row, Knob knob) throws SQLException {
    if (!row.has(knob.column())) {
      return Optional.empty();
    }
    if (knob.isNumber()) {
      return Optional.of(row.number(knob.column()));
    }
    return knob.isYesOrNo()
        ? row.optionalFlag(knob.column()).map(flag -> flag)
        : Optional.of(row.text(knob.column()));
  }
}
