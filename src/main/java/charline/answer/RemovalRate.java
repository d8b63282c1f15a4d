package charline.answer;

import charline.exposure.Exposure;
import charline.exposure.Settings;
import charline.model.CoatContradiction;
import charline.model.Estimate;
import charline.model.ModelFit;
import charline.model.Trials;
import charline.trial.Patch;
import charline.window.Strokes;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Passes to clear at one of the settings that were tried, and what they make of the work.
 *
 * @param settings what is dialled in
 * @param strokes how they lie side by side
 * @param exposure what one pass does
 * @param median passes by which every other patch on a new board is clear
 * @param nearlyAll passes by which 90 % of patches are
 * @param perPass coat thickness over the median passes, if the coats are known
 * @param gaugedMicrometres depth per pass that was measured at this setting, in µm
 */
public record RemovalRate(
    Settings settings,
    Strokes strokes,
    Exposure exposure,
    Estimate median,
    Estimate nearlyAll,
    Optional<PerPass> perPass,
    OptionalDouble gaugedMicrometres) {
  /**
   * Depth of one pass.
   *
   * @param micrometres in µm
   * @param orMore where one pass clears: it may lift more than there is
   */
  public record PerPass(double micrometres, boolean orMore) {}

  private static final int SHOWN = 5;
  private static final double NEARLY_ALL = 0.9;

  /** Whole passes that clear 90 % of patches. */
  public int wholePasses() {
    return (int) Math.min(Integer.MAX_VALUE, Math.ceil(nearlyAll.median() - 1e-9));
  }

  /** Net area rate with so many passes, in cm²/min. */
  public double netSquareCentimetresPerMinute() {
    return exposure
        .areaRate()
        .overlapping(strokes.overlap())
        .netOf(wholePasses())
        .squareCentimetresPerMinute();
  }

  /** Rates at up to five tried settings, from the least dose to the most. */
  static List<RemovalRate> of(Trials trials, ModelFit clearing, Strokes strokes) {
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
              return new RemovalRate(
                  patch.settings(),
                  strokes,
                  exposure,
                  median,
                  nearlyAll,
                  perPass(thickness, median.median()),
                  gauged(trials.patches(), patch.settings()));
            })
        .toList();
  }

  private static Optional<PerPass> perPass(OptionalDouble thickness, double passes) {
    return thickness.isPresent()
        ? Optional.of(new PerPass(thickness.getAsDouble() / passes, passes <= 1))
        : Optional.empty();
  }

  private static OptionalDouble gauged(List<Patch> patches, Settings settings) {
    return patches.stream()
        .filter(p -> p.settings().equals(settings))
        .flatMapToDouble(p -> CoatContradiction.perPassByGauge(p).stream())
        .average();
  }

  /** Thickness of the coat that the answer is for, in um, if every finish has one. */
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
}
