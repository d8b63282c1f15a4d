package charline.cli.judge;

import charline.cli.desk.Typed;
import charline.exposure.Pulses;
import charline.exposure.Spot;
import charline.log.reference.Nearest;
import charline.quantity.Invariant;
import charline.quantity.Measure.Quantity;
import charline.refusal.Refusal;
import charline.trial.Rig;
import charline.window.Bench;
import charline.window.SpeedKnob;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** Knobs that stay fixed across a window, as typed: {@code spot=0.6mm,rep=40kHz,width=60mm}. */
record FixedKnobs(Map<String, Double> values) {
  private static final Map<String, Quantity> KNOWN = new LinkedHashMap<>();

  static {
    KNOWN.put("spot", Quantity.LENGTH);
    KNOWN.put("rep", Quantity.RATE);
    KNOWN.put("pulse", Quantity.PULSE_DURATION);
    KNOWN.put("width", Quantity.LENGTH);
    KNOWN.put("spacing", Quantity.LENGTH);
  }

  /**
   * @param text what was typed, or null for nothing
   */
  static FixedKnobs parse(String text) {
    Map<String, Double> values = new LinkedHashMap<>();
    for (String part : text == null ? new String[0] : text.split(",")) {
      String[] sides = part.split("=", 2);
      String knob = sides[0].strip();
      if (sides.length < 2 || !KNOWN.containsKey(knob)) {
        List<String> near = Nearest.to(knob, KNOWN.keySet());
        throw Typed.refused(
            "--at",
            "knobs must read like spot=0.6mm,rep=40kHz,width=60mm, not \"%s\"; known are %s%s."
                .formatted(
                    part.strip(),
                    String.join(", ", KNOWN.keySet()),
                    near.isEmpty() ? "" : " (did you mean " + near.get(0) + "?)"));
      }
      double value = Typed.measure("--at " + knob, sides[1], KNOWN.get(knob));
      values.put(knob, Invariant.positive("--at " + knob, value, KNOWN.get(knob).base()));
    }
    if (values.containsKey("width") && values.containsKey("spacing")) {
      throw Typed.refused("--at", "give width (hand speed) or spacing (scan speed), not both.");
    }
    return new FixedKnobs(values);
  }

  /** The rig with this scan width as its usual one, if a width was typed. */
  Rig on(Rig rig) {
    return usual(
        rig,
        rig.spotMillimetres(),
        rig.repetitionKilohertz(),
        rig.pulseNanoseconds(),
        typed("width", rig.scanWidthMillimetres()));
  }

  /** The rig with everything that was typed as its usual settings. */
  Rig asUsualOf(Rig rig) {
    return usual(
        rig,
        typed("spot", rig.spotMillimetres()),
        typed("rep", rig.repetitionKilohertz()),
        typed("pulse", rig.pulseNanoseconds()),
        typed("width", rig.scanWidthMillimetres()));
  }

  private OptionalDouble typed(String knob, OptionalDouble usual) {
    return values.containsKey(knob) ? OptionalDouble.of(values.get(knob)) : usual;
  }

  private static Rig usual(
      Rig rig,
      OptionalDouble spot,
      OptionalDouble repetition,
      OptionalDouble pulse,
      OptionalDouble width) {
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
        width,
        rig.lens(),
        rig.checks());
  }

  /** The bench with whatever was typed in its place. */
  Bench on(Bench bench) {
    Bench fixed = bench;
    if (values.containsKey("spot")) {
      fixed = fixed.withSpot(new Spot(values.get("spot"), bench.rig().spotDefinition()));
    }
    if (values.containsKey("rep") || values.containsKey("pulse")) {
      fixed = fixed.withPulses(pulses(bench));
    }
    if (values.containsKey("width")) {
      fixed = fixed.withSpeed(new SpeedKnob(SpeedKnob.Kind.HAND, values.get("width")));
    }
    if (values.containsKey("spacing")) {
      fixed = fixed.withSpeed(new SpeedKnob(SpeedKnob.Kind.SCAN, values.get("spacing")));
    }
    return fixed;
  }

  private Pulses pulses(Bench bench) {
    Pulses now =
        bench
            .pulses()
            .orElseThrow(
                () ->
                    Refusal.usage(
                        "Rig %s is cw and has no pulses, so --at takes neither rep nor pulse."
                            .formatted(bench.rig().name())));
    return new Pulses(
        values.getOrDefault("rep", now.repetitionKilohertz()),
        values.containsKey("pulse")
            ? OptionalDouble.of(values.get("pulse"))
            : now.durationNanoseconds());
  }
}
