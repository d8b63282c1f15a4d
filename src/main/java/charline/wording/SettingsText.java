package charline.wording;

import static charline.quantity.Figures.plain;

import charline.exposure.DoseForm;
import charline.exposure.Emission;
import charline.exposure.Exposure;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.PowerSetting;
import charline.exposure.Settings;
import charline.exposure.TimedArea;
import charline.plan.Purpose;
import charline.quantity.Figures;
import charline.trial.Patch;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;

/** Settings and what they do to the work, in the words of the bench. */
public final class SettingsText {
  private SettingsText() {}

  /** "60 %" or "120 W". */
  public static String power(PowerSetting power) {
    return plain(power.value()) + " " + power.unit().symbol();
  }

  /** "hand 22 mm/s", "scan 5000 mm/s, spacing 0.1 mm", "25 cm2 in 4 s". */
  public static String form(DoseForm form) {
    if (form instanceof HandPass hand) {
      return "hand " + plain(hand.handSpeedMillimetresPerSecond()) + " mm/s";
    }
    if (form instanceof LineScan scan) {
      return "scan %s mm/s, spacing %s mm"
          .formatted(
              plain(scan.spotSpeedMillimetresPerSecond()), plain(scan.lineSpacingMillimetres()));
    }
    TimedArea timed = (TimedArea) form;
    return "%s cm2 in %s s"
        .formatted(plain(timed.areaSquareCentimetres()), plain(timed.secondsPerPass()));
  }

  /** The speed alone, with its unit: "22 mm/s", "5000 mm/s", "25 cm2/4 s". */
  public static String speed(DoseForm form) {
    if (form instanceof HandPass hand) {
      return plain(hand.handSpeedMillimetresPerSecond()) + " mm/s";
    }
    if (form instanceof LineScan scan) {
      return plain(scan.spotSpeedMillimetresPerSecond()) + " mm/s";
    }
    TimedArea timed = (TimedArea) form;
    return "%s cm2/%s s"
        .formatted(plain(timed.areaSquareCentimetres()), plain(timed.secondsPerPass()));
  }

  /** "60 %, hand 22 mm/s". */
  public static String settings(Settings settings) {
    return power(settings.power()) + ", " + form(settings.form());
  }

  /** "9.09 J/cm2 per pass, 1.06 J/cm2 fluence". */
  public static String dose(Patch patch) {
    Exposure exposure = patch.exposure();
    return "%s J/cm2 per pass, %s"
        .formatted(Figures.three(exposure.doseJoulesPerCm2()), intensity(patch));
  }

  /** "1.06 J/cm2 fluence" or "298000 W/cm2 irradiance". */
  public static String intensity(Patch patch) {
    Emission emission = patch.rig().emission();
    return "%s %s %s"
        .formatted(
            Figures.three(patch.exposure().intensity()),
            emission.intensityUnit(),
            emission == Emission.PULSED ? "fluence" : "irradiance");
  }

  /** "1 pass", "3 passes". */
  public static String passes(int passes) {
    return Figures.count(passes, "pass", "passes");
  }

  /** "up to 5 passes" where a patch is judged after every pass, "2 passes" where it is not. */
  public static String plannedPasses(int passes, Purpose purpose) {
    return passes == 1 || purpose == Purpose.CONFIRM ? passes(passes) : "up to " + passes(passes);
  }

  /** "2026-06-01 14:30", in the zone in which it was noted. */
  public static String minute(OffsetDateTime moment) {
    return moment.toLocalDate() + " " + moment.toLocalTime().truncatedTo(ChronoUnit.MINUTES);
  }
}
