package charline.log;

import charline.exposure.PowerSetting;
import charline.exposure.Settings;
import charline.exposure.SpotDefinition;
import charline.log.database.ResultRow;
import charline.trial.Knob;
import charline.trial.KnobValues;
import java.sql.SQLException;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;

/** The settings of a patch as columns: those of the other dose forms stay empty. */
public final class SettingsColumns {
  private static final String DEFINITION = "spot_definition";

  /** The column of each knob, in the order of the table; the definition follows the spot. */
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

  /**
   * Values in the order power_pct, power_w, spot_speed_mm_s, line_spacing_mm, scan_width_mm,
   * hand_speed_mm_s, timed_area_cm2, seconds_per_pass, spot_mm, spot_definition, repetition_khz,
   * pulse_ns.
   */
  static Object[] of(Settings settings) {
    Map<Knob, Double> values = KnobValues.of(settings);
    Object[] columns = new Object[COLUMNS.size() + 1];
    int next = 0;
    for (Knob knob : COLUMNS.keySet()) {
      columns[next++] = values.get(knob);
      if (knob == Knob.SPOT) {
        columns[next++] = settings.spot().definition().word();
      }
    }
    return columns;
  }

  static Settings read(ResultRow row) throws SQLException {
    Map<Knob, Double> values = new EnumMap<>(Knob.class);
    for (Map.Entry<Knob, String> column : COLUMNS.entrySet()) {
      row.optionalNumber(column.getValue()).ifPresent(v -> values.put(column.getKey(), v));
    }
    return KnobValues.settings(values, SpotDefinition.ofWord(row.text(DEFINITION)));
  }

  public static PowerSetting power(ResultRow row) throws SQLException {
    return row.has("power_pct")
        ? PowerSetting.percent(row.number("power_pct"))
        : PowerSetting.watts(row.number("power_w"));
  }
}
