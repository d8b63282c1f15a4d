package charline.model.check;

import static charline.model.check.FitWords.done;
import static charline.model.check.FitWords.passes;
import static charline.model.check.FitWords.three;

import charline.exposure.Emission;
import charline.model.Event;
import charline.model.Trials;
import charline.trial.Patch;
import charline.trial.Reading;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.apache.commons.math3.stat.correlation.PearsonsCorrelation;

/**
 * What the trials cannot tell, so that the prior speaks in their place: outcomes all alike, a knob
 * never moved, two knobs moved as one; and what looks like a slip of the pen.
 */
record Untold(Trials trials, List<Watched> patches, Event event) {
  /** Closer to a straight line than this, two knobs are one. */
  private static final double COLLINEAR = 0.98;

  /** Spread in logarithms below which a knob counts as not moved. */
  private static final double UNMOVED = 1e-6;

  /** Times the median dose from which a patch's settings are doubted (common practice). */
  private static final double FAR = 20;

  List<FitFinding> findings() {
    List<String> words = new ArrayList<>();
    if (patches.size() == 1) {
      words.add("One patch alone says little: nearly all of this is the prior's word.");
    }
    outcomes(words);
    knobs(words);
    extremes(words);
    twice(words);
    return words.stream().map(w -> new FitFinding(Severity.LOOK, "evidence", w)).toList();
  }

  private void outcomes(List<String> words) {
    String onset = event == Event.CHAR ? "the wood begins to burn" : "the finish comes off";
    if (patches.stream().noneMatch(Watched::seen)) {
      words.add("No patch %s, so where %s is known from below only.".formatted(done(event), onset));
    } else if (patches.stream().allMatch(p -> p.seenAt(0))) {
      words.add(
          "Every patch had %s at its first reading, so where %s is known from above only."
              .formatted(done(event), onset));
    }
  }

  private void knobs(List<String> words) {
    if (patches.size() < 2) {
      return;
    }
    String intensity = trials.stratum().emission() == Emission.PULSED ? "fluence" : "irradiance";
    int[] passes =
        patches.stream().flatMapToInt(p -> Arrays.stream(p.passes())).distinct().toArray();
    boolean doseMoved = moved(Watched::lnDose);
    boolean intensityMoved = moved(Watched::lnIntensity);
    if (!doseMoved) {
      words.add(
          "Every patch had the same dose, so how fast the chance rises with dose is the prior's word.");
    }
    if (!intensityMoved) {
      words.add(
          "Every patch had the same %s, so what %s adds is the prior's word."
              .formatted(intensity, intensity));
    }
    if (passes.length == 1) {
      words.add(
          "Every reading was after %s, so what further passes add is the prior's word."
              .formatted(passes(passes[0])));
    }
    if (doseMoved && intensityMoved && patches.size() > 2 && together()) {
      words.add(
          "Dose and %s went up and down together, so which of them counts is the prior's word; vary the speed at one power."
              .formatted(intensity));
    }
  }

  private boolean moved(ToDoubleFunction<Watched> knob) {
    double low = patches.stream().mapToDouble(knob).min().orElseThrow();
    double high = patches.stream().mapToDouble(knob).max().orElseThrow();
    return high - low > UNMOVED;
  }

  private boolean together() {
    double correlation =
        new PearsonsCorrelation()
            .correlation(
                patches.stream().mapToDouble(Watched::lnDose).toArray(),
                patches.stream().mapToDouble(Watched::lnIntensity).toArray());
    return Math.abs(correlation) > COLLINEAR;
  }

  private void extremes(List<String> words) {
    double[] doses = patches.stream().mapToDouble(p -> Math.exp(p.lnDose())).sorted().toArray();
    double median = doses[doses.length / 2];
    for (Watched p : patches) {
      double dose = Math.exp(p.lnDose());
      double times = Math.max(dose / median, median / dose);
      if (times >= FAR) {
        words.add(
            "The dose of %s, %s J/cm2, is %s times %s the median dose of %s J/cm2; look whether a unit or a point slipped."
                .formatted(
                    p.code(),
                    three(dose),
                    three(times),
                    dose > median ? "over" : "under",
                    three(median)));
      }
    }
  }

  private void twice(List<String> words) {
    Map<Object, List<Patch>> alike = new LinkedHashMap<>();
    for (Patch p : trials.patches()) {
      alike
          .computeIfAbsent(
              List.of(
                  p.board().id(),
                  p.finish().id(),
                  p.rig().id(),
                  p.settings(),
                  p.burnedAt(),
                  p.readings().stream().map(Untold::shown).toList()),
              key -> new ArrayList<>())
          .add(p);
    }
    alike.values().stream()
        .filter(same -> same.size() > 1)
        .forEach(
            same ->
                words.add(
                    "%s agree in board, time, settings and readings; if that is one patch entered again, void the other."
                        .formatted(
                            same.stream().map(Patch::code).collect(Collectors.joining(", ")))));
  }

  private static List<Object> shown(Reading reading) {
    return List.of(reading.passes(), reading.outcome());
  }
}
