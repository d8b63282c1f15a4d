package charline.quantity;

import charline.refusal.Refusal;

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
      throw refusal(
          quantity, "between " + Figures.plain(low) + " and " + Figures.plain(high), value, unit);
    }
    return value;
  }

  private static Refusal refusal(String quantity, String condition, double value, String unit) {
    return Refusal.usage(
        "%s must be %s %s, not %s %s."
            .formatted(quantity, condition, unit, Figures.plain(value), unit));
  }
}
