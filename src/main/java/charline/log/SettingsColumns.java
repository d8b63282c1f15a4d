package charline.log;

import charline.exposure.DoseForm;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.SpotDefinition;
import charline.exposure.TimedArea;
import charline.log.database.ResultRow;
import java.sql.SQLException;
import java.util.Optional;

/** The settings of a patch as columns: those of the other dose forms stay empty. */
public final class SettingsColumns {
  private SettingsColumns() {}

  /**
   * Values in the order power_pct, power_w, spot_speed_mm_s, line_spacing_mm, scan_width_mm,
   * hand_speed_mm_s, timed_area_cm2, seconds_per_pass, spot_mm, spot_definition, repetition_khz,
   * pulse_ns.
   */
  static Object[] of(Settings settings) {
    boolean percent = settings.power().unit() == PowerSetting.Unit.PERCENT;
    Object[] columns = new Object[12];
    columns[percent ? 0 : 1] = settings.power().value();
    if (settings.form() instanceof LineScan lines) {
      columns[2] = lines.spotSpeedMillimetresPerSecond();
      columns[3] = lines.lineSpacingMillimetres();
    } else if (settings.form() instanceof HandPass hand) {
      columns[4] = hand.scanWidthMillimetres();
      columns[5] = hand.handSpeedMillimetresPerSecond();
    } else if (settings.form() instanceof TimedArea timed) {
      columns[6] = timed.areaSquareCentimetres();
      columns[7] = timed.secondsPerPass();
    }
    columns[8] = settings.spot().diameterMillimetres();
    columns[9] = settings.spot().definition().word();
    columns[10] = settings.pulses().map(Pulses::repetitionKilohertz);
    columns[11] = settings.pulses().map(Pulses::durationNanoseconds);
    return columns;
  }

  static Settings read(ResultRow row) throws SQLException {
    Spot spot = new Spot(row.number("spot_mm"), SpotDefinition.ofWord(row.text("spot_definition")));
    Optional<Pulses> pulses =
        row.has("repetition_khz")
            ? Optional.of(new Pulses(row.number("repetition_khz"), row.optionalNumber("pulse_ns")))
            : Optional.empty();
    return new Settings(power(row), form(row), spot, pulses);
  }

  public static PowerSetting power(ResultRow row) throws SQLException {
    return row.has("power_pct")
        ? PowerSetting.percent(row.number("power_pct"))
        : PowerSetting.watts(row.number("power_w"));
  }

  private static DoseForm form(ResultRow row) throws SQLException {
    if (row.has("spot_speed_mm_s")) {
      return new LineScan(row.number("spot_speed_mm_s"), row.number("line_spacing_mm"));
    }
    if (row.has("hand_speed_mm_s")) {
      return new HandPass(row.number("scan_width_mm"), row.number("hand_speed_mm_s"));
    }
    return new TimedArea(row.number("timed_area_cm2"), row.number("seconds_per_pass"));
  }
}
