package charline.cli.command;

import charline.exposure.PowerSetting;
import charline.quantity.Figures;
import charline.quantity.Measure;
import charline.quantity.Measure.Quantity;
import charline.refusal.Refusal;
import charline.trial.Plausibility;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads the text typed after an option; a refusal names the option. */
public final class TypedValues {
  private TypedValues() {}

  /** A number with an optional unit, in the base unit of its quantity. */
  public static double measure(String option, String text, Quantity quantity) {
    try {
      return Measure.parse(text, quantity).value();
    } catch (Refusal e) {
      throw refused(option, e.getMessage());
    }
  }

  /** The same, empty where nothing was typed. */
  public static OptionalDouble ifGiven(String option, String text, Quantity quantity) {
    return text == null
        ? OptionalDouble.empty()
        : OptionalDouble.of(measure(option, text, quantity));
  }

  /** A number that has no unit. */
  public static double plainNumber(String option, String text) {
    try {
      return Measure.plainNumber(text);
    } catch (Refusal e) {
      throw refused(option, e.getMessage());
    }
  }

  /** {@code 60%} or {@code 60} of the rated power, {@code 120W} or {@code 0.12kW} on the work. */
  public static PowerSetting power(String text) {
    Optional<String> unit = Measure.unit(text);
    if (unit.filter(Quantity.POWER::understands).isPresent()) {
      return PowerSetting.watts(measure("--power", text, Quantity.POWER));
    }
    if (unit.filter(u -> u.isEmpty() || Quantity.SHARE.understands(u)).isPresent()) {
      return PowerSetting.percent(percentage("--power", text));
    }
    throw refused(
        "--power",
        "the power must be a number in %%, W or kW, such as 60%% or 120W, not \"%s\"."
            .formatted(text));
  }

  /** A chance, 0 to 1, typed as a {@link #percentage}: {@code 5%} and {@code 5} are the same. */
  public static double chance(String option, String text) {
    return percentage(option, text) / 100;
  }

  /**
   * A share in percent, the sign left out or not. A number of 1 or less must carry it: {@code 0.05}
   * could be meant as a fraction, and one reading is a hundred times the other.
   */
  public static double percentage(String option, String text) {
    double value = measure(option, text, Quantity.SHARE);
    if (Plausibility.isFraction(value) && !text.strip().endsWith("%")) {
      String asFraction = Figures.plain(100 * value) + "%";
      String asPercent = Figures.plain(value) + "%";
      throw refused(
          option,
          "a share of 1 or less needs its %% sign, as %s can mean %s or %s; type %s or %s."
              .formatted(text.strip(), asFraction, asPercent, asFraction, asPercent));
    }
    return value;
  }

  /** A whole number, 1 or more. */
  public static int count(String option, String what, String text) {
    String digits = text.strip();
    if (!digits.matches("[1-9]\\d{0,5}")) {
      throw refused(
          option, "%s must be a whole number, 1 or more, not \"%s\".".formatted(what, text));
    }
    return Integer.parseInt(digits);
  }

  /** Yes or no. */
  public static boolean yes(String option, String text) {
    return switch (text.strip().toLowerCase(Locale.ROOT)) {
      case "yes", "y", "true" -> true;
      case "no", "n", "false" -> false;
      default -> throw refused(option, "the answer must be yes or no, not \"%s\".".formatted(text));
    };
  }

  /** A refusal that names the option at fault. */
  public static Refusal refused(String option, String sentence) {
    return Refusal.usage(option + ": " + sentence);
  }
}
