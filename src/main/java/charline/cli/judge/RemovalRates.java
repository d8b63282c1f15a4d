package charline.cli.judge;

import static charline.quantity.Figures.three;

import charline.cli.render.Json;
import charline.cli.render.Table;
import charline.cli.render.Wording;
import charline.exposure.Exposure;
import charline.exposure.Settings;
import charline.model.Estimate;
import charline.model.ModelFit;
import charline.model.Trials;
import charline.quantity.Figures;
import charline.trial.Patch;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** Passes to clear and what they make of the work, at some of the settings that were tried. */
final class RemovalRates {
  private static final int SHOWN = 5;
  private static final double NEARLY_ALL = 0.9;

  /**
   * One setting.
   *
   * @param settings what is dialled in
   * @param exposure what one pass does
   * @param median passes by which every other patch on a new board is clear
   * @param nearlyAll passes by which 90 % of patches are
   * @param perPassMicrometres coat thickness over the median passes, if the coats are known
   */
  record Rate(
      Settings settings,
      Exposure exposure,
      Estimate median,
      Estimate nearlyAll,
      OptionalDouble perPassMicrometres) {
    /** Whole passes that clear 90 % of patches. */
    int wholePasses() {
      return (int) Math.min(Integer.MAX_VALUE, Math.ceil(nearlyAll.median() - 1e-9));
    }

    double netSquareCentimetresPerMinute() {
      return exposure.areaRate().netOf(wholePasses()).squareCentimetresPerMinute();
    }
  }

  private RemovalRates() {}

  /** Rates at up to five tried settings, from the least dose to the most. */
  static List<Rate> of(Trials trials, ModelFit clearing) {
    OptionalDouble thickness = thickness(trials);
    return spread(settings(trials.patches())).stream()
        .map(
            patch -> {
              Exposure exposure = patch.exposure();
              double lnDose = Math.log(exposure.doseJoulesPerCm2());
              double lnIntensity = Math.log(exposure.intensity());
              Estimate median = clearing.posterior().doseLimit(0.5).passes(lnDose, lnIntensity);
              Estimate nearlyAll =
                  clearing.posterior().doseLimit(NEARLY_ALL).passes(lnDose, lnIntensity);
              return new Rate(
                  patch.settings(),
                  exposure,
                  median,
                  nearlyAll,
                  thickness.isPresent()
                      ? OptionalDouble.of(thickness.getAsDouble() / median.median())
                      : thickness);
            })
        .toList();
  }

  /** Thickness of the coat that the answer is for, if every finish has one. */
  static OptionalDouble thickness(Trials trials) {
    return trials.patches().stream().allMatch(p -> p.finish().thicknessMicrometres().isPresent())
        ? trials.coat().thicknessMicrometres()
        : OptionalDouble.empty();
  }

  private static List<Patch> settings(List<Patch> patches) {
    Map<Settings, Patch> different = new LinkedHashMap<>();
    patches.forEach(patch -> different.putIfAbsent(patch.settings(), patch));
    return different.values().stream()
        .sorted(
            (a, b) ->
                Double.compare(a.exposure().doseJoulesPerCm2(), b.exposure().doseJoulesPerCm2()))
        .toList();
  }

  private static List<Patch> spread(List<Patch> rising) {
    if (rising.size() <= SHOWN) {
      return rising;
    }
    List<Patch> chosen = new ArrayList<>();
    for (int k = 0; k < SHOWN; k++) {
      chosen.add(rising.get(k * (rising.size() - 1) / (SHOWN - 1)));
    }
    return chosen;
  }

  static String text(List<Rate> rates) {
    Table table =
        new Table(
            ">power", ">speed", ">J/cm2", ">passes, median", ">for 90 %", ">um/pass", ">cm2/min");
    for (Rate rate : rates) {
      table.row(
          Wording.power(rate.settings().power()),
          Wording.speed(rate.settings().form()),
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
            "The net rate takes the whole passes that clear 90 % of patches; char is not looked"
                + " at here, `charline window` does that.")
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

  static List<Json> json(List<Rate> rates) {
    return rates.stream()
        .map(
            rate ->
                new Json()
                    .put("settings", Wording.settings(rate.settings()))
                    .put("dose_j_cm2", rate.exposure().doseJoulesPerCm2())
                    .put("intensity", rate.exposure().intensity())
                    .put("passes_median", WindowJson.estimate(rate.median()))
                    .put("passes_for_90_pct", WindowJson.estimate(rate.nearlyAll()))
                    .put("um_per_pass", rate.perPassMicrometres())
                    .put("net_area_rate_cm2_min", rate.netSquareCentimetresPerMinute()))
        .toList();
  }
}
