package charline.cli.rig;

import charline.cli.command.TypedValues;
import charline.quantity.Measure.Quantity;
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
