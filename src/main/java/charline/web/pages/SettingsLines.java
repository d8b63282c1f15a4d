package charline.web.pages;

import charline.exposure.Emission;
import charline.exposure.Exposure;
import charline.quantity.Figures;
import charline.trial.DoseKnobs;
import charline.trial.Knob;
import charline.trial.Patch;
import charline.web.entry.DialledKnobs;

/** Settings of a patch in a line or two. */
public final class SettingsLines {
  private SettingsLines() {}

  /** "60 %, hand speed 18 mm/s, scan width 60 mm". */
  public static String dialled(Patch patch) {
    DialledKnobs dial = DialledKnobs.of(patch);
    DoseKnobs form = dial.form();
    return "%s %s, %s %s %s, %s %s %s"
        .formatted(
            dial.text(Knob.POWER_PCT),
            dial.powerUnit(),
            form.pace().noun(),
            dial.text(form.pace()),
            form.pace().printedUnit(),
            form.across().noun(),
            dial.text(form.across()),
            form.across().printedUnit());
  }

  /** "60 %, 18 mm/s, 11.2 J/cm²". */
  public static String brief(Patch patch) {
    DialledKnobs dial = DialledKnobs.of(patch);
    return "%s %s, %s %s, %s J/cm²"
        .formatted(
            dial.text(Knob.POWER_PCT),
            dial.powerUnit(),
            dial.text(dial.form().pace()),
            dial.form().pace().printedUnit(),
            Figures.significant(patch.exposure().doseJoulesPerCm2(), 3));
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
    DialledKnobs dial = DialledKnobs.of(patch);
    StringBuilder words = new StringBuilder("spot " + dial.text(Knob.SPOT) + " mm");
    if (patch.rig().emission() == Emission.PULSED) {
      words.append(", ").append(dial.text(Knob.RATE)).append(" kHz");
      if (!dial.text(Knob.PULSE).isEmpty()) {
        words.append(", ").append(dial.text(Knob.PULSE)).append(" ns");
      }
    }
    return words.toString();
  }
}
