package charline.model.check;

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
import org.apache.commons.math3.stat.correlation.PearsonsCorrelation;

/**
 * What the trials cannot tell, so that the prior speaks in their place: outcomes all alike, a knob
 * never moved, two knobs moved as one; and what looks like a slip of the pen.
 */
record WeakIdentification(Trials trials, List<ObservedPatch> patches, Event event) {
  /** Closer to a straight line than this, two knobs are one. */
  private static final double COLLINEAR = 0.98;

  /** Spread in logarithms below which a knob counts as not moved. */
  private static final double UNMOVED = 1e-6;

  /** Times the median dose from which a patch's settings are doubted (common practice). */
  private static final double FAR = 20;

  List<FitFinding> findings() {
    List<FitFinding> found = new ArrayList<>();
    if (patches.size() == 1) {
      found.add(new FitFinding.OnePatch());
    }
    outcomes(found);
    knobs(found);
    extremes(found);
    twice(found);
    return found;
  }

  private void outcomes(List<FitFinding> found) {
    if (patches.stream().noneMatch(ObservedPatch::seen)) {
      found.add(new FitFinding.NoneSeen(event));
    } else if (patches.stream().allMatch(p -> p.seenAt(0))) {
      found.add(new FitFinding.AllSeenAtFirst(event));
    }
  }

  private void knobs(List<FitFinding> found) {
    if (patches.size() < 2) {
      return;
    }
    Emission emission = trials.stratum().emission();
    int[] passes =
        patches.stream().flatMapToInt(p -> Arrays.stream(p.passes())).distinct().toArray();
    boolean doseMoved = moved(ObservedPatch::lnDose);
    boolean intensityMoved = moved(ObservedPatch::lnIntensity);
    if (!doseMoved) {
      found.add(new FitFinding.SameDose());
    }
    if (!intensityMoved) {
      found.add(new FitFinding.SameIntensity(emission));
    }
    if (passes.length == 1) {
      found.add(new FitFinding.SamePasses(passes[0]));
    }
    if (doseMoved && intensityMoved && patches.size() > 2 && together()) {
      found.add(new FitFinding.DoseWithIntensity(emission));
    }
  }

  private boolean moved(ToDoubleFunction<ObservedPatch> knob) {
    double low = patches.stream().mapToDouble(knob).min().orElseThrow();
    double high = patches.stream().mapToDouble(knob).max().orElseThrow();
    return high - low > UNMOVED;
  }

  private boolean together() {
    double correlation =
        new PearsonsCorrelation()
            .correlation(
                patches.stream().mapToDouble(ObservedPatch::lnDose).toArray(),
                patches.stream().mapToDouble(ObservedPatch::lnIntensity).toArray());
    return Math.abs(correlation) > COLLINEAR;
  }

  private void extremes(List<FitFinding> found) {
    double[] doses = patches.stream().mapToDouble(p -> Math.exp(p.lnDose())).sorted().toArray();
    double median = doses[doses.length / 2];
    for (ObservedPatch p : patches) {
      double dose = Math.exp(p.lnDose());
      if (Math.max(dose / median, median / dose) >= FAR) {
        found.add(new FitFinding.DoseFarOff(p.code(), dose, median));
      }
    }
  }

  private void twice(List<FitFinding> found) {
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
                  p.readings().stream().map(WeakIdentification::shown).toList()),
              key -> new ArrayList<>())
          .add(p);
    }
    alike.values().stream()
        .filter(same -> same.size() > 1)
        .forEach(
            same ->
                found.add(new FitFinding.EnteredTwice(same.stream().map(Patch::code).toList())));
  }

  private static List<Object> shown(Reading reading) {
    return List.of(reading.passes(), reading.outcome());
  }
}
