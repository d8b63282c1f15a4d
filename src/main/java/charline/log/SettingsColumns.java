package charline.log;

import charline.exposure.Settings;
import charline.exposure.SpotDefinition;
import charline.log.database.ResultRow;
import charline.log.database.RowValues;
import charline.trial.Knob;
import charline.trial.KnobValues;
import java.sql.SQLException;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;

/** The settings of a patch as columns: those of the other dose forms stay empty. */
public final class SettingsColumns {
  private static final String DEFINITION = "spot_definition";

  /** The column of each knob, without the definition of its spot. */
  private static final Map<Knob, String> COLUMNS = new LinkedHashMap<>();

  static {
    COLUMNS.put(Knob.POWER_PCT, "power_pct");
    COLUMNS.put(Knob.POWER_W, "power_w");
    COLUMNS.put(Knob.SCAN, "spot_speed_mm_s");
    COLUMNS.put(Knob.SPACING, "line_spacing_mm");
    COLUMNS.put(Knob.WIDTH, "scan_width_mm");
    COLUMNS.put(Knob.HAND, "hand_speed_mm_s");
    COLUMNS.put(Knob.AREA, "timed_area_cm2");
    COLUMNS.put(Knob.SECONDS, "seconds_per_pass");
    COLUMNS.put(Knob.SPOT, "spot_mm");
    COLUMNS.put(Knob.RATE, "repetition_khz");
    COLUMNS.put(Knob.PULSE, "pulse_ns");
  }

  private SettingsColumns() {}

  /** The column of each knob. */
  static Map<Knob, String> columns() {
    return Collections.unmodifiableMap(COLUMNS);
  }

  /** Puts the settings; a column that they do not have is null. */
  static RowValues put(RowValues row, Settings settings) {
    Map<Knob, Double> values = KnobValues.of(settings);
    COLUMNS.forEach((knob, column) -> row.put(column, values.get(knob)));
    return row.put(DEFINITION, settings.spot().definition().word());
  }

  public static Settings read(ResultRow row) throws SQLException {
    Map<Knob, Double> values = new EnumMap<>(Knob.class);
    for (Map.Entry<Knob, String> column : COLUMNS.entrySet()) {
      row.optionalNumber(column.getValue()).ifPresent(v -> values.put(column.getKey(), v));
    }
    return KnobValues.settings(values, SpotDefinition.ofWord(row.text(DEFINITION)));
  }
}
