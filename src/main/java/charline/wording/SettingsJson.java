package charline.wording;

import charline.exposure.DoseForm;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.TimedArea;
import java.util.Optional;

/** The settings of one pass, with the keys of a trial sheet. */
public final class SettingsJson {
  private SettingsJson() {}

  /** Puts the settings; a knob that they do not have is null. */
  public static void put(Json json, Settings settings) {
    PowerSetting power = settings.power();
    boolean percent = power.unit() == PowerSetting.Unit.PERCENT;
    DoseForm form = settings.form();
    Optional<LineScan> scan = only(form, LineScan.class);
    Optional<HandPass> hand = only(form, HandPass.class);
    Optional<TimedArea> timed = only(form, TimedArea.class);
    json.put("power_pct", percent ? power.value() : null)
        .put("power_w", percent ? null : power.value())
        .put("rep_khz", settings.pulses().map(Pulses::repetitionKilohertz))
        .put("pulse_ns", settings.pulses().map(Pulses::durationNanoseconds))
        .put("spot_mm", settings.spot().diameterMillimetres())
        .put("scan_mm_s", scan.map(LineScan::spotSpeedMillimetresPerSecond))
        .put("spacing_mm", scan.map(LineScan::lineSpacingMillimetres))
        .put("width_mm", hand.map(HandPass::scanWidthMillimetres))
        .put("hand_mm_s", hand.map(HandPass::handSpeedMillimetresPerSecond))
        .put("area_cm2", timed.map(TimedArea::areaSquareCentimetres))
        .put("seconds", timed.map(TimedArea::secondsPerPass));
  }

  private static <T> Optional<T> only(DoseForm form, Class<T> kind) {
    return kind.isInstance(form) ? Optional.of(kind.cast(form)) : Optional.empty();
  }
}
