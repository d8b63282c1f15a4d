package charline.window;

import charline.exposure.DoseForm;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.trial.Knob;
import charline.trial.Patch;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;

/**
 * What was tried in each knob beside dose, intensity and passes, which {@link TriedRegion} guards:
 * spot, repetition rate, pulse duration, hand speed with scan width, scan speed with line spacing.
 *
 * <p>Pulse duration is set on steps that differ in the shape of the pulse too, so a value counts as
 * tried only where a trial had it. Every other knob counts as tried from the lowest to the highest
 * of the trials. Both allow for 3 %, closer than which no dial and no hand repeats a setting
 * (common practice, no published source).
 *
 * @param values in the unit of each knob; knobs that no trial says are missing
 */
public record TriedKnobs(Map<Knob, NavigableSet<Double>> values) {
  private static final double ALIKE = 1.03;

  /** Rounding of a value that was converted there and back. */
  private static final double ROUNDING = 1 + 1e-9;

  public TriedKnobs {
    values = Collections.unmodifiableMap(values);
  }

  /** What these patches tried. Spots are kept as 1/e² diameters. */
  public static TriedKnobs of(List<Patch> patches) {
    Map<Knob, NavigableSet<Double>> tried = new EnumMap<>(Knob.class);
    for (Patch patch : patches) {
      knobs(patch.settings(), patch.rig().scanWidthMillimetres())
          .forEach((knob, value) -> tried.computeIfAbsent(knob, k -> new TreeSet<>()).add(value));
    }
    return new TriedKnobs(tried);
  }

  private static Map<Knob, Double> knobs(Settings settings, OptionalDouble usualWidth) {
    Map<Knob, Double> knobs = fixed(settings.spot(), settings.pulses());
    DoseForm form = settings.form();
    if (form instanceof HandPass hand) {
      knobs.put(Knob.WIDTH, hand.scanWidthMillimetres());
      knobs.put(Knob.HAND, hand.handSpeedMillimetresPerSecond());
    } else if (form instanceof LineScan lines) {
      knobs.put(Knob.SPACING, lines.lineSpacingMillimetres());
      knobs.put(Knob.SCAN, lines.spotSpeedMillimetresPerSecond());
    } else if (usualWidth.isPresent()) { // timed over an area: led by hand at the usual width
      double width = usualWidth.getAsDouble();
      knobs.put(Knob.WIDTH, width);
      knobs.put(
          Knob.HAND,
          new SpeedKnob(SpeedKnob.Kind.HAND, width)
              .speedFor(form.areaRate().squareCentimetresPerSecond()));
    }
    return knobs;
  }

  private static Map<Knob, Double> fixed(Spot spot, Optional<Pulses> pulses) {
    Map<Knob, Double> knobs = new EnumMap<>(Knob.class);
    knobs.put(Knob.SPOT, spot.oneOverESquaredMillimetres());
    pulses.ifPresent(
        p -> {
          knobs.put(Knob.RATE, p.repetitionKilohertz());
          p.durationNanoseconds().ifPresent(ns -> knobs.put(Knob.PULSE, ns));
        });
    return knobs;
  }

  /**
   * What was tried in a knob, in its unit: each value of a pulse duration, else the lowest and the
   * highest; one value where all trials were alike, none where no trial says.
   */
  public List<Double> tried(Knob knob) {
    NavigableSet<Double> all = values.getOrDefault(knob, new TreeSet<>());
    return knob == Knob.PULSE || all.size() < 2
        ? List.copyOf(all)
        : List.of(all.first(), all.last());
  }

  /** Speeds that were tried of a kind, in mm/s; empty where none was. */
  Optional<Range> speeds(SpeedKnob.Kind kind) {
    List<Double> tried = tried(kind.knob());
    return tried.isEmpty()
        ? Optional.empty()
        : Optional.of(new Range(tried.get(0), tried.get(tried.size() - 1)));
  }

  /** The knobs that stay fixed across a window and stand where no trial had them. */
  public List<UntriedKnob> untried(RigSetup bench) {
    Map<Knob, Double> knobs = fixed(bench.spot(), bench.pulses());
    boolean hand = bench.speed().kind() == SpeedKnob.Kind.HAND;
    knobs.put(hand ? Knob.WIDTH : Knob.SPACING, bench.speed().acrossMillimetres());
    return untried(knobs, bench.spot());
  }

  /**
   * The knobs of one setting that stand where no trial had them.
   *
   * @param usualWidth of the rig, for a pass that was timed over an area
   */
  public List<UntriedKnob> untried(Settings settings, OptionalDouble usualWidth) {
    return untried(knobs(settings, usualWidth), settings.spot());
  }

  private List<UntriedKnob> untried(Map<Knob, Double> knobs, Spot spot) {
    List<UntriedKnob> untried = new ArrayList<>();
    knobs.forEach(
        (knob, value) -> {
          if (!has(knob, value)) {
            untried.add(
                knob == Knob.SPOT
                    ? new UntriedKnob(knob, spot.diameterMillimetres(), diameters(spot))
                    : new UntriedKnob(knob, value, tried(knob)));
          }
        });
    return untried;
  }

  /** Spots that were tried, as the definition of this one has them. */
  private List<Double> diameters(Spot spot) {
    return tried(Knob.SPOT).stream().map(d -> d / spot.definition().toOneOverESquared()).toList();
  }

  private boolean has(Knob knob, double value) {
    NavigableSet<Double> all = values.getOrDefault(knob, new TreeSet<>());
    double slack = ALIKE * ROUNDING;
    if (all.isEmpty()) {
      return false;
    }
    return knob == Knob.PULSE
        ? !all.subSet(value / slack, true, value * slack, true).isEmpty()
        : value >= all.first() / slack && value <= all.last() * slack;
  }
}
