package charline.cli.rig;

import charline.cli.command.OptionDialect;
import charline.cli.command.TypedValues;
import charline.exposure.Optics;
import charline.quantity.Measure.Quantity;
import charline.trial.Circumstances;
import charline.trial.Knob;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.Option;

/** Options for the usual settings of a rig. */
final class RigOptions {
  /** Takes out a value that was recorded. */
  private static final String NONE = "none";

  @Option(
      names = "--spot",
      paramLabel = "DIAMETER",
      description = "Usual spot diameter on the work, in mm.")
  private String spot;

  @Option(
      names = "--rep",
      paramLabel = "RATE",
      description = "Usual repetition rate of a pulsed rig, in kHz.")
  private String rep;

  @Option(
      names = "--pulse",
      paramLabel = "TIME",
      description = "Usual pulse duration of a pulsed rig, in ns.")
  private String pulse;

  @Option(names = "--width", paramLabel = "WIDTH", description = "Usual scan width, in mm.")
  private String width;

  @Option(
      names = "--max-pulse",
      paramLabel = "ENERGY",
      description =
          "Largest energy of a pulse that a pulsed rig gives, in mJ. A setting beyond it is asked"
              + " about; windows and patch lists stay below it.")
  private String maxPulse;

  @Option(names = "--lens", paramLabel = "TEXT", description = "The lens, in your words.")
  private String lens;

  private final Map<Knob, String> given = new EnumMap<>(Knob.class);

  @Option(
      names = "--figure",
      paramLabel = "WORD",
      description =
          "Scan figure that the head usually draws: line, circle, spiral, ring, zigzag, sine, or"
              + " with --sure your own word.")
  void figure(String text) {
    give(Knob.FIGURE, text);
  }

  @Option(
      names = "--lines",
      paramLabel = "RATE",
      description = "Usual lines or turns per second; to and fro are two lines.")
  void lines(String text) {
    give(Knob.LINES, text);
  }

  @Option(
      names = "--standoff",
      paramLabel = "LENGTH",
      description = "Usual distance from head to work, in mm.")
  void standOff(String text) {
    give(Knob.STAND_OFF, text);
  }

  @Option(
      names = "--defocus",
      paramLabel = "LENGTH",
      description = "Usual distance of the work from focus, in mm.")
  void defocus(String text) {
    give(Knob.DEFOCUS, text);
  }

  @Option(
      names = "--air",
      paramLabel = "YES/NO",
      description = "Whether the head usually blows air at the work.")
  void air(String text) {
    give(Knob.AIR, text);
  }

  @Option(
      names = "--extraction",
      paramLabel = "YES/NO",
      description = "Whether the fumes are usually extracted.")
  void extraction(String text) {
    give(Knob.EXTRACTION, text);
  }

  @Option(
      names = "--focus-spot",
      paramLabel = "DIAMETER",
      description =
          "Spot diameter at focus, in mm. With --beam-quality, the spot follows from a defocus.")
  private String focusSpot;

  @Option(names = "--beam-quality", paramLabel = "M2", description = "Beam quality M2, 1 or more.")
  private String beamQuality;

  private void give(Knob knob, String text) {
    if (text != null) { // an option that was not given is set to null first
      given.put(knob, text);
    }
  }

  /** Usual circumstances: those given, else those known. */
  Circumstances usual(Circumstances known) {
    Map<Knob, Object> values = known.values();
    given.forEach(
        (knob, text) -> {
          if (text.strip().equalsIgnoreCase(NONE)) {
            values.remove(knob);
          } else {
            values.put(knob, knob.read(text, OptionDialect.INSTANCE));
          }
        });
    return Circumstances.of(values);
  }

  Optics optics(Optics known) {
    OptionalDouble m2 = known.beamQuality();
    if (beamQuality != null) {
      m2 =
          beamQuality.strip().equalsIgnoreCase(NONE)
              ? OptionalDouble.empty()
              : OptionalDouble.of(TypedValues.plainNumber("--beam-quality", beamQuality));
    }
    return new Optics(
        value("--focus-spot", focusSpot, Quantity.LENGTH, known.focusSpotMillimetres()), m2);
  }

  OptionalDouble spot(OptionalDouble known) {
    return value("--spot", spot, Quantity.LENGTH, known);
  }

  OptionalDouble repetition(OptionalDouble known) {
    return value("--rep", rep, Quantity.RATE, known);
  }

  OptionalDouble pulse(OptionalDouble known) {
    return value("--pulse", pulse, Quantity.PULSE_DURATION, known);
  }

  OptionalDouble width(OptionalDouble known) {
    return value("--width", width, Quantity.LENGTH, known);
  }

  OptionalDouble largestPulse(OptionalDouble known) {
    return value("--max-pulse", maxPulse, Quantity.PULSE_ENERGY, known);
  }

  Optional<String> lens(Optional<String> known) {
    return lens == null
        ? known
        : Optional.of(lens).filter(text -> !text.strip().equalsIgnoreCase(NONE));
  }

  /** What was given; what was known where nothing was. */
  static OptionalDouble value(String option, String text, Quantity quantity, OptionalDouble known) {
    if (text == null) {
      return known;
    }
    return text.strip().equalsIgnoreCase(NONE)
        ? OptionalDouble.empty()
        : TypedValues.ifGiven(option, text, quantity);
  }
}
