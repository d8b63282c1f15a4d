package charline.answer;

import charline.exposure.Pulses;
import charline.exposure.Spot;
import charline.refusal.Refusal;
import charline.trial.Knob;
import charline.trial.Patch;
import charline.trial.Rig;
import charline.window.RigSetup;
import charline.window.SpeedKnob;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * Knobs that stay fixed across a window, as far as the question fixes them; the others are as most
 * patches had them.
 *
 * @param values spot, repetition rate, pulse duration, and scan width of a head led by hand or
 *     spacing of lines that a machine scans, as far as they are fixed
 */
public record FixedKnobs(Map<Knob, Double> values) {
  /** Everything as most patches had it. */
  public static final FixedKnobs NONE = new FixedKnobs(Map.of());

  public FixedKnobs {
    values = Map.copyOf(values);
    if (values.containsKey(Knob.WIDTH) && values.containsKey(Knob.SPACING)) {
      throw Refusal.usage("Give a width (hand speed) or a spacing (scan speed), not both.");
    }
  }

  /** What a knob is fixed at. */
  public OptionalDouble of(Knob knob) {
    return values.containsKey(knob) ? OptionalDouble.of(values.get(knob)) : OptionalDouble.empty();
  }

  /** The bench of a rig with the knobs that most of the patches had, and these in their place. */
  RigSetup bench(Rig rig, List<Patch> patches, OffsetDateTime at) {
    return on(
        RigSetup.of(
                usual(
                    rig, rig.spotMillimetres(), rig.repetitionKilohertz(), rig.pulseNanoseconds()),
                patches,
                at)
            .withRig(rig));
  }

  /** The bench of a rig that nothing was burned on, with its usual settings and these. */
  RigSetup bench(Rig rig, OffsetDateTime at) {
    return on(
        RigSetup.usual(
                usual(
                    rig,
                    or(Knob.SPOT, rig.spotMillimetres()),
                    or(Knob.RATE, rig.repetitionKilohertz()),
                    or(Knob.PULSE, rig.pulseNanoseconds())),
                at)
            .withRig(rig));
  }

  private OptionalDouble or(Knob knob, OptionalDouble usual) {
    return values.containsKey(knob) ? of(knob) : usual;
  }

  /** The rig with other usual settings, for those that its bench starts from. */
  private Rig usual(Rig rig, OptionalDouble spot, OptionalDouble repetition, OptionalDouble pulse) {
    return new Rig(
        rig.id(),
        rig.name(),
        rig.emission(),
        rig.ratedWatts(),
        rig.wavelengthNanometres(),
        rig.spotDefinition(),
        spot,
        repetition,
        pulse,
        or(Knob.WIDTH, rig.scanWidthMillimetres()),
        rig.largestPulseMillijoules(),
        rig.lens(),
        rig.usual(),
        rig.optics(),
        rig.checks(),
        rig.upkeep());
  }

  private RigSetup on(RigSetup bench) {
    RigSetup fixed = bench;
    if (values.containsKey(Knob.SPOT)) {
      fixed = fixed.withSpot(new Spot(values.get(Knob.SPOT), bench.rig().spotDefinition()));
    }
    if (values.containsKey(Knob.RATE) || values.containsKey(Knob.PULSE)) {
      fixed = fixed.withPulses(pulses(bench));
    }
    if (values.containsKey(Knob.WIDTH)) {
      fixed = fixed.withSpeed(new SpeedKnob(SpeedKnob.Kind.HAND, values.get(Knob.WIDTH)));
    }
    if (values.containsKey(Knob.SPACING)) {
      fixed = fixed.withSpeed(new SpeedKnob(SpeedKnob.Kind.SCAN, values.get(Knob.SPACING)));
    }
    return fixed;
  }

  private Pulses pulses(RigSetup bench) {
    Pulses now =
        bench
            .pulses()
            .orElseThrow(
                () ->
                    Refusal.usage(
                        "Rig %s is cw and has no pulses, so it takes neither a repetition rate nor a pulse duration."
                            .formatted(bench.rig().name())));
    return new Pulses(
        values.getOrDefault(Knob.RATE, now.repetitionKilohertz()),
        or(Knob.PULSE, now.durationNanoseconds()));
  }
}
