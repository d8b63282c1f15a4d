package charline.wording;

import static charline.quantity.Figures.three;

import charline.answer.RemovalRate;
import charline.model.Estimate;
import charline.quantity.Figures;
import java.math.RoundingMode;
import java.util.List;

/** Passes to clear and what they make of the work, at some of the settings that were tried. */
public final class RemovalRateText {
  private RemovalRateText() {}

  public static String text(List<RemovalRate> rates) {
    Table table =
        new Table(
            ">power", ">speed", ">J/cm2", ">passes, median", ">for 90 %", ">um/pass", ">cm2/min");
    for (RemovalRate rate : rates) {
      table.row(
          SettingsText.power(rate.settings().power()),
          SettingsText.speed(rate.settings().form()),
          three(rate.exposure().doseJoulesPerCm2()),
          passes(rate.median()),
          passes(rate.nearlyAll()),
          rate.perPassMicrometres().isEmpty()
              ? "-"
              : three(rate.perPassMicrometres().getAsDouble()),
          three(rate.netSquareCentimetresPerMinute()));
    }
    return "Passes to clear on a new board, with 90 % intervals\n"
        + table.text()
        + Table.paragraph(
            "The net rate counts the whole passes that clear 90 % of patches. It ignores char;"
                + " a window does not.")
        + "\n";
  }

  private static String passes(Estimate passes) {
    return "%s (%s-%s)"
        .formatted(
            shown(passes.median(), RoundingMode.HALF_UP),
            shown(passes.low(), RoundingMode.FLOOR),
            shown(passes.high(), RoundingMode.CEILING));
  }

  private static String shown(double passes, RoundingMode mode) {
    return passes > 99 ? ">99" : Figures.tenths(passes, mode);
  }

  public static List<Json> json(List<RemovalRate> rates) {
    return rates.stream()
        .map(
            rate ->
                new Json()
                    .put("settings", SettingsText.settings(rate.settings()))
                    .put("dose_j_cm2", rate.exposure().doseJoulesPerCm2())
                    .put("intensity", rate.exposure().intensity())
                    .put("passes_median", WindowJson.estimate(rate.median()))
                    .put("passes_for_90_pct", WindowJson.estimate(rate.nearlyAll()))
                    .put("um_per_pass", rate.perPassMicrometres())
                    .put("net_area_rate_cm2_min", rate.netSquareCentimetresPerMinute()))
        .toList();
  }
}
