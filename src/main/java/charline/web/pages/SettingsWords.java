package charline.web.pages;

import charline.exposure.Emission;
import charline.exposure.Exposure;
import charline.quantity.Figures;
import charline.trial.Patch;
import charline.web.entry.Dial;
import charline.web.entry.Form;
import charline.web.entry.Knob;
import java.util.Locale;

/** Settings of a patch in a line or two. */
public final class SettingsWords {
  private SettingsWords() {}

  /** "60 %, hand speed 18 mm/s, scan width 60 mm". */
  public static String dialled(Patch patch) {
    Dial dial = Dial.of(patch);
    Form form = dial.form();
    return "%s %s, %s %s %s, %s %s %s"
        .formatted(
            dial.text(Knob.POWER),
            dial.powerUnit(),
            lower(form.pace()),
            dial.text(form.pace()),
            form.pace().unit(),
            lower(form.across()),
            dial.text(form.across()),
            form.across().unit());
  }

  private static String lower(Knob knob) {
    return knob.label().substring(0, 1).toLowerCase(Locale.ROOT) + knob.label().substring(1);
  }

  /** "11.2 J/cm² a pass, fluence 1.02 J/cm²". */
  public static String gives(Patch patch) {
    Exposure exposure = patch.exposure();
    return "%s J/cm² a pass, %s"
        .formatted(
            Figures.significant(exposure.doseJoulesPerCm2(), 3),
            patch.rig().emission() == Emission.PULSED
                ? "fluence " + Figures.significant(exposure.intensity(), 3) + " J/cm²"
                : "irradiance " + Figures.significant(exposure.intensity() / 1000, 3) + " kW/cm²");
  }

  /** "spot 0.5 mm, 60 kHz, 100 ns". */
  public static String fixed(Patch patch) {
    Dial dial = Dial.of(patch);
    StringBuilder words = new StringBuilder("spot " + dial.text(Knob.SPOT) + " mm");
    if (patch.rig().emission() == Emission.PULSED) {
      words.append(", ").append(dial.text(Knob.REP)).append(" kHz");
      if (!dial.text(Knob.PULSE).isEmpty()) {
        words.append(", ").append(dial.text(Knob.PULSE)).append(" ns");
      }
    }
    return words.toString();
  }
}
