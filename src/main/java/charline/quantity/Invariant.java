package charline.quantity;

import charline.refusal.Refusal;
import java.util.Locale;

/** Refusals worded the same everywhere: what must hold, then what came. */
public final class Invariant {
  private Invariant() {}

  /**
   * Returns the value if it is a finite number above zero.
   *
   * @throws Refusal "Spot diameter must be above 0 mm, not -1 mm."
   */
  public static double positive(String quantity, double value, String unit) {
    if (!(value > 0) || Double.isInfinite(value)) {
      throw refusal(quantity, "above 0", value, unit);
    }
    return value;
  }

  /**
   * Returns the value if it is a finite number, zero or more.
   *
   * @throws Refusal "Depth removed must be 0 or more um, not NaN um."
   */
  public static double notNegative(String quantity, double value, String unit) {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw refusal(quantity, "0 or more", value, unit);
    }
    return value;
  }

  /**
   * Returns the value if it lies in {@code [low, high]}.
   *
   * @throws Refusal "Power must be between 0 and 100 %, not 140 %."
   */
  public static double within(String quantity, double value, double low, double high, String unit) {
    if (!(value >= low && value <= high)) {
      throw refusal(quantity, "between " + plain(low) + " and " + plain(high), value, unit);
    }
    return value;
  }

  private static Refusal refusal(String quantity, String condition, double value, String unit) {
    return Refusal.usage(
        "%s must be %s %s, not %s %s.".formatted(quantity, condition, unit, plain(value), unit));
  }

  /** A number as a person would write it: no trailing zeros, no exponent for everyday sizes. */
  public static String plain(double value) {
    if (Double.isNaN(value) || Double.isInfinite(value)) {
      return Double.toString(value);
    }
    if (value == Math.rint(value) && Math.abs(value) < 1e9) {
      return Long.toString((long) value);
    }
    return String.format(Locale.ROOT, "%.6g", value)
        .replaceFirst("(\\.\\d*?)0+($|e)", "$1$2")
        .replaceFirst("\\.($|e)", "$1");
  }
}
