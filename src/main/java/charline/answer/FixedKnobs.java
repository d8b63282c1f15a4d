package charline.answer;

import charline.exposure.Pulses;
import charline.exposure.Spot;
import charline.refusal.Refusal;
import charline.trial.Patch;
import charline.trial.Rig;
import charline.window.RigSetup;
import charline.window.SpeedKnob;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Knobs that stay fixed across a window, as far as the question fixes them; the others are as most
 * patches had them.
 *
 * @param spotMillimetres diameter of the spot
 * @param repetitionKilohertz repetition rate
 * @param pulseNanoseconds pulse duration
 * @param scanWidthMillimetres scan width of a head led by hand
 * @param lineSpacingMillimetres spacing of lines that a machine scans
 */
public record FixedKnobs(
    OptionalDouble spotMillimetres,
    OptionalDouble repetitionKilohertz,
    OptionalDouble pulseNanoseconds,
    OptionalDouble scanWidthMillimetres,
    OptionalDouble lineSpacingMillimetres) {
  private static final OptionalDouble OPEN = OptionalDouble.empty();

  /** Everything as most patches had it. */
  public static final FixedKnobs NONE = new FixedKnobs(OPEN, OPEN, OPEN, OPEN, OPEN);

  public FixedKnobs {
    if (scanWidthMillimetres.isPresent() && lineSpacingMillimetres.isPresent()) {
      throw Refusal.usage("Give a width (hand speed) or a spacing (scan speed), not both.");
    }
  }

  /** The same with a scan width. */
  public FixedKnobs withScanWidth(OptionalDouble millimetres) {
    return new FixedKnobs(
        spotMillimetres,
        repetitionKilohertz,
        pulseNanoseconds,
        millimetres,
        lineSpacingMillimetres);
  }

  /** The bench of a rig with the knobs that most of the patches had, and these in their place. */
  RigSetup bench(Rig rig, List<Patch> patches, OffsetDateTime at) {
    return on(
        RigSetup.of(
            usual(rig, rig.spotMillimetres(), rig.repetitionKilohertz(), rig.pulseNanoseconds()),
            patches,
            at));
  }

  /** The bench of a rig that nothing was burned on, with its usual settings and these. */
  RigSetup bench(Rig rig, OffsetDateTime at) {
    return on(
        RigSetup.usual(
            usual(
                rig,
                or(spotMillimetres, rig.spotMillimetres()),
                or(repetitionKilohertz, rig.repetitionKilohertz()),
                or(pulseNanoseconds, rig.pulseNanoseconds())),
            at));
  }

  private static OptionalDouble or(OptionalDouble fixed, OptionalDouble usual) {
    return fixed.isPresent() ? fixed : usual;
  }

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
        or(scanWidthMillimetres, rig.scanWidthMillimetres()),
        rig.lens(),
        rig.checks());
  }

  private RigSetup on(RigSetup bench) {
    RigSetup fixed = bench;
    if (spotMillimetres.isPresent()) {
      fixed = fixed.withSpot(new Spot(spotMillimetres.getAsDouble(), bench.rig().spotDefinition()));
    }
    if (repetitionKilohertz.isPresent() || pulseNanoseconds.isPresent()) {
      fixed = fixed.withPulses(pulses(bench));
    }
    if (scanWidthMillimetres.isPresent()) {
      fixed =
          fixed.withSpeed(new SpeedKnob(SpeedKnob.Kind.HAND, scanWidthMillimetres.getAsDouble()));
    }
    if (lineSpacingMillimetres.isPresent()) {
      fixed =
          fixed.withSpeed(new SpeedKnob(SpeedKnob.Kind.SCAN, lineSpacingMillimetres.getAsDouble()));
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
        repetitionKilohertz.orElse(now.repetitionKilohertz()),
        or(pulseNanoseconds, now.durationNanoseconds()));
  }
}
