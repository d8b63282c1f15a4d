package charline.log.sheet;

import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.PowerSetting;
import charline.exposure.Settings;
import charline.exposure.SpotDefinition;
import charline.exposure.TimedArea;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;

/** Settings spread over the columns of a sheet. */
final class KnobValues {
  private KnobValues() {}

  /**
   * The number in each column; columns that do not apply are absent.
   *
   * @param spots what the sheet's spot diameters mean: the rig's definition
   * @param patchSquareCentimetres size of the patch, if known
   */
  static Map<Column, Double> of(
      Settings settings, SpotDefinition spots, OptionalDouble patchSquareCentimetres) {
    Map<Column, Double> values = new EnumMap<>(Column.class);
    values.put(
        settings.power().unit() == PowerSetting.Unit.PERCENT ? Column.POWER_PCT : Column.POWER_W,
        settings.power().value());
    settings
        .pulses()
        .ifPresent(
            p -> {
              values.put(Column.REP_KHZ, p.repetitionKilohertz());
              p.durationNanoseconds().ifPresent(ns -> values.put(Column.PULSE_NS, ns));
            });
    values.put(
        Column.SPOT_MM,
        settings.spot().definition() == spots
            ? settings.spot().diameterMillimetres()
            : settings.spot().as(spots).diameterMillimetres());
    if (settings.form() instanceof LineScan scan) {
      values.put(Column.SCAN_MM_S, scan.spotSpeedMillimetresPerSecond());
      values.put(Column.SPACING_MM, scan.lineSpacingMillimetres());
    } else if (settings.form() instanceof HandPass hand) {
      values.put(Column.WIDTH_MM, hand.scanWidthMillimetres());
      values.put(Column.HAND_MM_S, hand.handSpeedMillimetresPerSecond());
    } else if (settings.form() instanceof TimedArea timed) {
      values.put(Column.AREA_CM2, timed.areaSquareCentimetres());
      values.put(Column.SECONDS, timed.secondsPerPass());
    }
    patchSquareCentimetres.ifPresent(a -> values.put(Column.PATCH_CM2, a));
    return values;
  }

  /** True if both have the same columns with the same numbers, but for rounding. */
  static boolean same(Map<Column, Double> a, Map<Column, Double> b) {
    return a.keySet().equals(b.keySet())
        && a.keySet().stream().allMatch(c -> Numbers.same(a.get(c), b.get(c)));
  }
}
