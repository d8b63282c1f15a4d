package charline.paper;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Numbers as the sheet prints them. A bound is rounded to the side on which it stays true: an upper
 * one up, a lower one down.
 */
public final class Figures {
  /** Printed in place of a value that is not a finite number. */
  static final String UNKNOWN = "not known";

  /** Enough to drop the noise of binary fractions before a directed rounding. */
  private static final MathContext NINE = new MathContext(9, RoundingMode.HALF_EVEN);

  private Figures() {}

  /** With a fixed number of decimals. */
  public static String decimals(double value, int decimals) {
    return Double.isFinite(value)
        ? exact(value).setScale(decimals, RoundingMode.HALF_UP).toPlainString()
        : UNKNOWN;
  }

  /** With a number of significant digits, no exponent. */
  public static String significant(double value, int digits) {
    return Double.isFinite(value)
        ? new BigDecimal(value).round(new MathContext(digits, RoundingMode.HALF_UP)).toPlainString()
        : UNKNOWN;
  }

  /** As short as it can be said: no trailing zeros, no exponent, nine digits at most. */
  public static String shortest(double value) {
    if (!Double.isFinite(value)) {
      return UNKNOWN;
    }
    return value == 0 ? "0" : exact(value).stripTrailingZeros().toPlainString();
  }

  /** A share that was asked for, such as "5 %". */
  public static String share(double value) {
    return shortest(100 * value) + " %";
  }

  /** A probability: whole percent in the middle, one decimal within 10 % of either end. */
  public static String chance(double value) {
    if (!Double.isFinite(value)) {
      return UNKNOWN;
    }
    if (value < 0.0005) {
      return "under 0.1 %";
    }
    if (value > 0.9995) {
      return "over 99.9 %";
    }
    return percent(value, RoundingMode.HALF_UP);
  }

  /** An upper bound of a probability, rounded up. */
  public static String atMost(double value) {
    return Double.isFinite(value) ? percent(value, RoundingMode.CEILING) : UNKNOWN;
  }

  /** A lower bound of a probability, rounded down. */
  public static String atLeast(double value) {
    return Double.isFinite(value) ? percent(value, RoundingMode.FLOOR) : UNKNOWN;
  }

  private static String percent(double value, RoundingMode mode) {
    BigDecimal percent = exact(100 * value);
    boolean nearAnEnd = value < 0.0995 || value > 0.9005;
    BigDecimal rounded = percent.setScale(nearAnEnd ? 1 : 0, mode);
    boolean anEnd = rounded.signum() == 0 || rounded.compareTo(BigDecimal.valueOf(100)) == 0;
    return rounded.setScale(anEnd ? 0 : rounded.scale()).toPlainString() + " %";
  }

  private static BigDecimal exact(double value) {
    return new BigDecimal(value).round(NINE);
  }

  /** "1 patch", "2 patches". */
  public static String count(long number, String one, String many) {
    return number + " " + (number == 1 ? one : many);
  }
}
