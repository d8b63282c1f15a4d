package charline.quote;

import charline.quantity.Figures;
import charline.refusal.Refusal;
import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Hours, money or another quantity of a job as a range.
 *
 * @param low where all goes well
 * @param usual to be expected
 * @param high where it does not
 */
public record Span(double low, double usual, double high) {
  static final Span NONE = new Span(0, 0, 0);

  /** What is printed, so that printed parts add up to the printed sum. */
  private static final int DECIMALS = 2;

  public Span {
    if (!(0 <= low && low <= usual && usual <= high)) {
      throw Refusal.usage(
          "Hours must not fall from the low to the high end, as %s, %s, %s do."
              .formatted(Figures.plain(low), Figures.plain(usual), Figures.plain(high)));
    }
  }

  /** Known, so the same at either end of the range. */
  static Span sure(double value) {
    return new Span(value, value, value);
  }

  Span fromMinutes() {
    return times(1.0 / 60);
  }

  Span times(double factor) {
    return new Span(low * factor, usual * factor, high * factor);
  }

  Span times(Span factors) {
    return new Span(low * factors.low, usual * factors.usual, high * factors.high);
  }

  Span times(Counts counts) {
    return times(new Span(counts.low(), counts.usual(), counts.high()));
  }

  Span plus(Span other) {
    return new Span(low + other.low, usual + other.usual, high + other.high);
  }

  /** Rounded to hundredths, the ends outward. */
  Span rounded() {
    return new Span(
        rounded(low, RoundingMode.FLOOR),
        rounded(usual, RoundingMode.HALF_UP),
        rounded(high, RoundingMode.CEILING));
  }

  /** The sum of two that are rounded, without the noise of binary fractions. */
  Span plusExactly(Span other) {
    return new Span(sum(low, other.low), sum(usual, other.usual), sum(high, other.high));
  }

  private static double rounded(double value, RoundingMode mode) {
    // 3.4700000000000002 is 3.47 and not 3.48.
    BigDecimal exact = new BigDecimal(value).setScale(9, RoundingMode.HALF_EVEN);
    return exact.setScale(DECIMALS, mode).doubleValue();
  }

  private static double sum(double a, double b) {
    return BigDecimal.valueOf(a).add(BigDecimal.valueOf(b)).doubleValue();
  }
}
