package charline.window;

import charline.exposure.AreaRate;
import charline.exposure.DoseForm;
import charline.exposure.Emission;
import charline.exposure.Exposure;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.refusal.Missing;
import charline.refusal.Refusal;
import charline.trial.Patch;
import charline.trial.Rig;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * A rig as it stands for the work: what stays fixed while power, speed and passes vary.
 *
 * @param rig the rig
 * @param at moment whose power check counts
 * @param spot spot on the work
 * @param pulses repetition rate and pulse duration of a pulsed rig, empty for a continuous one
 * @param speed the speed knob
 * @param strokes how strokes are laid over the work
 */
public record RigSetup(
    Rig rig,
    OffsetDateTime at,
    Spot spot,
    Optional<Pulses> pulses,
    SpeedKnob speed,
    Strokes strokes) {
  /** A rig that works in single strokes. */
  public RigSetup(Rig rig, OffsetDateTime at, Spot spot, Optional<Pulses> pulses, SpeedKnob speed) {
    this(rig, at, spot, pulses, speed, Strokes.SINGLE);
  }

  /** The rig that most of the patches were burned on; the latest such where there is a tie. */
  public static Rig mostUsedRig(List<Patch> patches) {
    Object id = mostCommon(patches, p -> p.rig().id());
    return patches.stream().map(Patch::rig).filter(r -> r.id().equals(id)).findAny().orElseThrow();
  }

  /**
   * A rig with its fixed knobs as most of the patches had them, its own usual settings where none
   * of them was burned on it.
   *
   * @throws Refusal if the speed knob's width is known from nowhere
   */
  public static RigSetup of(Rig rig, List<Patch> patches, OffsetDateTime at) {
    List<Patch> own = patches.stream().filter(p -> p.rig().id().equals(rig.id())).toList();
    List<Patch> models = own.isEmpty() ? patches : own;
    Spot spot =
        own.isEmpty() && rig.spotMillimetres().isPresent()
            ? new Spot(rig.spotMillimetres().getAsDouble(), rig.spotDefinition())
            : mostCommon(models, p -> p.settings().spot());
    Optional<Pulses> pulses =
        own.isEmpty() && rig.repetitionKilohertz().isPresent()
            ? Optional.of(
                new Pulses(rig.repetitionKilohertz().getAsDouble(), rig.pulseNanoseconds()))
            : mostCommon(models, p -> p.settings().pulses());
    return new RigSetup(rig, at, spot, pulses, speedKnob(rig, own, models));
  }

  /**
   * A rig at its own usual settings, led by hand.
   *
   * @throws Refusal naming the usual setting that it lacks
   */
  public static RigSetup usual(Rig rig, OffsetDateTime at) {
    Optional<Pulses> pulses =
        rig.emission() == Emission.PULSED
            ? Optional.of(
                new Pulses(
                    usual(rig, Missing.REPETITION_RATE, rig.repetitionKilohertz()),
                    rig.pulseNanoseconds()))
            : Optional.empty();
    return new RigSetup(
        rig,
        at,
        new Spot(usual(rig, Missing.SPOT, rig.spotMillimetres()), rig.spotDefinition()),
        pulses,
        new SpeedKnob(
            SpeedKnob.Kind.HAND, usual(rig, Missing.SCAN_WIDTH, rig.scanWidthMillimetres())));
  }

  private static double usual(Rig rig, Missing what, OptionalDouble value) {
    return value.orElseThrow(
        () ->
            Refusal.lacking(
                what,
                "Without patches, charline uses the rig's usual %s, but rig %s has none."
                    .formatted(
                        what.name().toLowerCase(Locale.ROOT).replace('_', ' '), rig.name())));
  }

  private static SpeedKnob speedKnob(Rig rig, List<Patch> own, List<Patch> models) {
    SpeedKnob usual = mostCommon(models, p -> knobOf(p.settings().form(), rig));
    return own.isEmpty()
            && usual.kind() == SpeedKnob.Kind.HAND
            && rig.scanWidthMillimetres().isPresent()
        ? new SpeedKnob(SpeedKnob.Kind.HAND, rig.scanWidthMillimetres().getAsDouble())
        : usual;
  }

  private static SpeedKnob knobOf(DoseForm form, Rig rig) {
    if (form instanceof HandPass hand) {
      return new SpeedKnob(SpeedKnob.Kind.HAND, hand.scanWidthMillimetres());
    }
    if (form instanceof LineScan lines) {
      return new SpeedKnob(SpeedKnob.Kind.SCAN, lines.lineSpacingMillimetres());
    }
    return new SpeedKnob(
        SpeedKnob.Kind.HAND,
        rig.scanWidthMillimetres()
            .orElseThrow(
                () ->
                    Refusal.lacking(
                        Missing.SCAN_WIDTH,
                        "These patches were timed over an area, so the hand speed needs a scan"
                            + " width, and rig %s has none.".formatted(rig.name()))));
  }

  /** The most common value; of equally common ones the one seen last. */
  private static <T> T mostCommon(Collection<Patch> patches, Function<Patch, T> of) {
    Map<T, Integer> counts = new LinkedHashMap<>();
    T best = null;
    for (Patch patch : patches) {
      T value = of.apply(patch);
      int count = counts.merge(value, 1, Integer::sum);
      if (best == null || count >= counts.get(best)) {
        best = value;
      }
    }
    return Objects.requireNonNull(best, "A bench is read off at least one patch.");
  }

  /**
   * The spot of the last patch that was burned on this rig, where it is not the one of this bench:
   * the lens or the stand-off may be another one now.
   *
   * @param patches in the order of burning
   */
  public Optional<Spot> otherSpotOfLate(List<Patch> patches) {
    return patches.stream()
        .filter(p -> p.rig().id().equals(rig.id()))
        .reduce((earlier, later) -> later)
        .map(p -> p.settings().spot())
        .filter(last -> !last.equals(spot));
  }

  /** The same of a rig that differs in its usual settings at most. */
  public RigSetup withRig(Rig other) {
    return new RigSetup(other, at, spot, pulses, speed, strokes);
  }

  /** The same at another moment. */
  public RigSetup at(OffsetDateTime moment) {
    return new RigSetup(rig, moment, spot, pulses, speed, strokes);
  }

  public RigSetup withSpot(Spot other) {
    return new RigSetup(rig, at, other, pulses, speed, strokes);
  }

  public RigSetup withPulses(Pulses other) {
    return new RigSetup(rig, at, spot, Optional.of(other), speed, strokes);
  }

  public RigSetup withSpeed(SpeedKnob other) {
    return new RigSetup(rig, at, spot, pulses, other, strokes);
  }

  public RigSetup withStrokes(Strokes other) {
    return new RigSetup(rig, at, spot, pulses, speed, other);
  }

  /** True if lines lie so far apart at these fixed knobs that they leave stripes. */
  public boolean linesApart() {
    return settings(1, 1).linesApart();
  }

  /** Power on the work at a setting, in W, by the power checks that count for these pulses. */
  public double watts(double powerPercent) {
    return rig.powerCurve(pulses, at).watts(powerPercent);
  }

  /** Setting that gives a power on the work; above 100 % where the dial does not reach it. */
  public double percent(double watts) {
    return rig.powerCurve(pulses, at).percent(watts);
  }

  /**
   * Highest setting that the rig is run at with these pulses, in percent: where a pulse has the
   * rig's largest energy, else 100.
   */
  public double highestPercent() {
    OptionalDouble most = rig.mostWatts(pulses);
    return most.isEmpty() ? 100 : Math.min(100, percent(most.getAsDouble()));
  }

  /** The settings at a power and a speed. */
  public Settings settings(double powerPercent, double speedMillimetresPerSecond) {
    return new Settings(
        PowerSetting.percent(powerPercent), speed.at(speedMillimetresPerSecond), spot, pulses);
  }

  /** The exposure of one pass at a power and a speed. */
  public Exposure exposure(double powerPercent, double speedMillimetresPerSecond) {
    return Exposure.of(
        rig.emission(), watts(powerPercent), settings(powerPercent, speedMillimetresPerSecond));
  }

  /** The area covered by one pass at a speed, strokes laid side by side. */
  public AreaRate areaRate(Exposure exposure) {
    return exposure.areaRate().overlapping(strokes.overlap());
  }

  /** What 1 W on the work does at 1 mm/s; dose goes with power / speed, intensity with power. */
  private Exposure perWatt() {
    return Exposure.of(rig.emission(), 1, settings(100, 1));
  }

  /** Dose per pass at a setting and 1 mm/s, in J/cm²; dose is in proportion to 1 / speed. */
  double doseAtUnitSpeed(double powerPercent) {
    return perWatt().doseJoulesPerCm2() * watts(powerPercent);
  }

  /** Intensity at a setting, in J/cm² or W/cm². */
  double intensity(double powerPercent) {
    return perWatt().intensity() * watts(powerPercent);
  }

  /** Speed at which a power gives a dose, in mm/s. */
  public double speedForDose(double powerPercent, double doseJoulesPerCm2) {
    return doseAtUnitSpeed(powerPercent) / doseJoulesPerCm2;
  }

  /** Power on the dial at which the spot has an intensity. */
  public double powerForIntensity(double intensity) {
    return percent(intensity / perWatt().intensity());
  }
}
