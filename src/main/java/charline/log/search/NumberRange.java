package charline.log.search;

import charline.quantity.Figures;

/**
 * Numbers between two ends.
 *
 * @param low the low end, minus infinity where there is none
 * @param withLow whether the low end itself belongs to it
 * @param high the high end, infinity where there is none
 * @param withHigh whether the high end itself belongs to it
 */
public record NumberRange(double low, boolean withLow, double high, boolean withHigh) {
  public static final NumberRange ANY =
      new NumberRange(Double.NEGATIVE_INFINITY, true, Double.POSITIVE_INFINITY, true);

  /** Units are converted with rounding, so ends are a little wide: 1.2 in/s is 30.48 mm/s. */
  private static final double SLACK = 1e-9;

  public static NumberRange over(double low) {
    return new NumberRange(low, false, Double.POSITIVE_INFINITY, true);
  }

  public static NumberRange atLeast(double low) {
    return new NumberRange(low, true, Double.POSITIVE_INFINITY, true);
  }

  public static NumberRange under(double high) {
    return new NumberRange(Double.NEGATIVE_INFINITY, true, high, false);
  }

  public static NumberRange atMost(double high) {
    return new NumberRange(Double.NEGATIVE_INFINITY, true, high, true);
  }

  public static NumberRange between(double a, double b) {
    return new NumberRange(Math.min(a, b), true, Math.max(a, b), true);
  }

  /** One number alone. */
  public static NumberRange exactly(double value) {
    return between(value, value);
  }

  public boolean isAny() {
    return equals(ANY);
  }

  public boolean has(double value) {
    double slack = SLACK * Math.max(1, Math.abs(value));
    boolean above = withLow ? value >= low - slack : value > low + slack;
    boolean below = withHigh ? value <= high + slack : value < high - slack;
    return above && below;
  }

  /** What is in both. */
  public NumberRange and(NumberRange other) {
    boolean lowHere = low > other.low || (low == other.low && !withLow);
    boolean highHere = high < other.high || (high == other.high && !withHigh);
    return new NumberRange(
        lowHere ? low : other.low,
        lowHere ? withLow : other.withLow,
        highHere ? high : other.high,
        highHere ? withHigh : other.withHigh);
  }

  /** "above 5 J/cm2", "30 to 40 mm/s", "2". */
  public String words(String unit) {
    String u = unit.isEmpty() ? "" : " " + unit;
    if (low == high) {
      return Figures.plain(low) + u;
    }
    if (Double.isInfinite(low)) {
      return (withHigh ? "at most " : "below ") + Figures.plain(high) + u;
    }
    if (Double.isInfinite(high)) {
      return (withLow ? "at least " : "above ") + Figures.plain(low) + u;
    }
    return Figures.plain(low) + " to " + Figures.plain(high) + u;
  }
}
