package charline.wording;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as a person writes them. */
public final class Figures {
  private Figures() {}

  /** Three significant digits, whole numbers from 100 up: 0.0123, 1.06, 9.09, 187, 5000. */
  public static String three(double value) {
    if (Double.isNaN(value) || Double.isInfinite(value)) {
      return "-";
    }
    BigDecimal exact = BigDecimal.valueOf(value);
    BigDecimal rounded =
        Math.abs(value) >= 100
            ? exact.setScale(0, RoundingMode.HALF_UP)
            : exact.round(new MathContext(3, RoundingMode.HALF_UP));
    return plain(rounded);
  }

  /** Two decimals, for diagnostics that are compared with a limit. */
  public static String two(double value) {
    return Double.isNaN(value) || Double.isInfinite(value)
        ? "-"
        : scaled(value, 2, RoundingMode.HALF_UP).toPlainString();
  }

  /** A share of one as a percentage: 4.2 %, 91 %, and never 100 % for less than all of it. */
  public static String percent(double share) {
    double value = 100 * share;
    if (value > 99 && value < 100) {
      return value >= 99.9 ? "above 99.9 %" : plain(scaled(value, 1, RoundingMode.DOWN)) + " %";
    }
    if (value > 0 && value < 0.1) {
      return "below 0.1 %";
    }
    return plain(scaled(value, value < 10 ? 1 : 0, RoundingMode.HALF_UP)) + " %";
  }

  /** A count with its noun: "1 patch", "12 patches". */
  public static String count(long n, String one, String many) {
    return n + " " + (n == 1 ? one : many);
  }

  private static BigDecimal scaled(double value, int digits, RoundingMode mode) {
    return BigDecimal.valueOf(value).setScale(digits, mode);
  }

  private static String plain(BigDecimal value) {
    return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
  }
}
