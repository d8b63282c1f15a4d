package charline.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Numbers as people read them, on every page, sheet and terminal. There is no exponent for everyday
 * sizes and no local comma.
 *
 * <p>A bound is rounded to the side on which it stays true: an upper bound up, a lower one down. A
 * range that must not be left is rounded inward. Directed rounding starts from the shortest decimal
 * that names the same double, so that 0.07 is 7 % and not 7.1 %.
 */
public final class Figures {
  /** Printed in place of a value that is not a finite number. */
  public static final String UNKNOWN = "not known";

  /** The same in a table of numbers. */
  private static final String DASH = "-";

  private static final MathContext NINE = new MathContext(9, RoundingMode.HALF_EVEN);
  private static final int THREE = 3;
  private static final int MOST_DIGITS = 17;

  /** A spread in natural logarithms from which a factor reads better than a percentage. */
  private static final double WIDE = 0.7;

  /** Shares up to this, and from 1 less this up, are said as one in so many. */
  private static final double FEW = 0.1;

  /** No finer than this. */
  private static final int MOST_PARTS = 1000;

  /** An upper bound of a share that leaves less than one in a thousand. */
  public static final String ALL = "all";

  /** A lower bound of a share below one in a thousand. */
  public static final String NONE = "none";

  private Figures() {}

  /** A unit, or words with units in them, as pages and print have it: "J/cm2" is "J/cm²". */
  public static String typeset(String words) {
    return words.replace("cm2", "cm²");
  }

  /** As a person would write it: six digits, no trailing zeros, no exponent for everyday sizes. */
  public static String plain(double value) {
    if (!Double.isFinite(value)) {
      return Double.toString(value);
    }
    if (value == Math.rint(value) && Math.abs(value) < 1e9) {
      return Long.toString((long) value);
    }
    return String.format(Locale.ROOT, "%.6g", value)
        .replaceFirst("(\\.\\d*?)0+($|e)", "$1$2")
        .replaceFirst("\\.($|e)", "$1");
  }

  /** As {@link #plain} with a unit, "0.6 mm"; empty for no value. */
  public static Optional<String> plain(OptionalDouble value, String unit) {
    return value.isPresent()
        ? Optional.of(plain(value.getAsDouble()) + " " + unit)
        : Optional.empty();
  }

  /** As short as it can be said: no trailing zeros, no exponent, nine digits at most. */
  public static String shortest(double value) {
    return Double.isFinite(value) ? stripped(new BigDecimal(value).round(NINE)) : UNKNOWN;
  }

  /** With a fixed number of decimals. */
  public static String decimals(double value, int decimals) {
    return decimals(value, decimals, RoundingMode.HALF_UP);
  }

  /** An upper bound with a fixed number of decimals, rounded up. */
  public static String decimalsUp(double value, int decimals) {
    return decimals(value, decimals, RoundingMode.CEILING);
  }

  /** A lower bound with a fixed number of decimals, rounded down. */
  public static String decimalsDown(double value, int decimals) {
    return decimals(value, decimals, RoundingMode.FLOOR);
  }

  private static String decimals(double value, int decimals, RoundingMode mode) {
    return Double.isFinite(value)
        ? decimal(value).setScale(decimals, mode).toPlainString()
        : UNKNOWN;
  }

  /** With a number of significant digits, zeros that rounding left kept: 0.60, 14, 1200. */
  public static String significant(double value, int digits) {
    return Double.isFinite(value)
        ? new BigDecimal(value).round(new MathContext(digits, RoundingMode.HALF_UP)).toPlainString()
        : UNKNOWN;
  }

  /** With a number of significant digits, trailing zeros dropped: 0.6, 14, 1200. */
  public static String digits(double value, int digits) {
    return Double.isFinite(value)
        ? stripped(decimal(value).round(new MathContext(digits, RoundingMode.HALF_UP)))
        : UNKNOWN;
  }

  /** Three significant digits, whole numbers from 100 up: 0.0123, 1.06, 9.09, 187, 5000. */
  public static String three(double value) {
    return rounded(value, THREE, RoundingMode.HALF_UP);
  }

  /** An upper bound in three digits, rounded up. */
  public static String threeUp(double value) {
    return rounded(value, THREE, RoundingMode.CEILING);
  }

  /** A lower bound in three digits, rounded down. */
  public static String threeDown(double value) {
    return rounded(value, THREE, RoundingMode.FLOOR);
  }

  /** To a tenth, trailing zero dropped. */
  public static String tenths(double value) {
    return tenths(value, RoundingMode.HALF_UP);
  }

  /** To a tenth, rounded as a bound asks for, trailing zero dropped. */
  public static String tenths(double value, RoundingMode mode) {
    return Double.isFinite(value) ? stripped(decimal(value).setScale(1, mode)) : DASH;
  }

  /** Two decimals, for diagnostics that are compared with a limit. */
  public static String two(double value) {
    return Double.isFinite(value) ? decimals(value, 2) : DASH;
  }

  /** Lower and upper bound, "5.2 to 8.1": the low end rounded down, the high end up. */
  public static String bounds(double low, double high) {
    return threeDown(low) + " to " + threeUp(high);
  }

  /** "5.2 to 8.1", or one number where both read alike. */
  public static String span(double low, double high) {
    return three(low).equals(three(high)) ? three(low) : three(low) + " to " + three(high);
  }

  /**
   * A range that must not be left, "5.2 to 8.1": the low end rounded up, the high end down, in
   * three digits, or in more where fewer would leave no room.
   */
  public static String inward(double low, double high) {
    for (int digits = THREE; digits < MOST_DIGITS; digits++) {
      String from = rounded(low, digits, RoundingMode.CEILING);
      String to = rounded(high, digits, RoundingMode.FLOOR);
      if (!Double.isFinite(low)
          || !Double.isFinite(high)
          || new BigDecimal(from).compareTo(new BigDecimal(to)) <= 0) {
        return from + " to " + to;
      }
    }
    return stripped(decimal(low)) + " to " + stripped(decimal(high));
  }

  /** A share that was asked for, as it was asked: "5 %", "97.5 %". */
  public static String share(double share) {
    return Double.isFinite(share) ? shortest(100 * share) + " %" : UNKNOWN;
  }

  /**
   * A probability: whole percents, one digit more below 10 and above 99, and never 0 or 100 % for
   * what may or may not happen.
   */
  public static String percent(double share) {
    if (!Double.isFinite(share)) {
      return UNKNOWN;
    }
    if (share < 0.001) {
      return "under 0.1 %";
    }
    return share > 0.999 ? "over 99.9 %" : percent(share, RoundingMode.HALF_UP);
  }

  /** A ratio that may pass one, "93 %" or "105 %": whole percents, one digit more below 10. */
  public static String ratio(double value) {
    return Double.isFinite(value)
        ? stripped(
                decimal(value)
                    .movePointRight(2)
                    .setScale(Math.abs(value) < 0.0995 ? 1 : 0, RoundingMode.HALF_UP))
            + " %"
        : UNKNOWN;
  }

  /** An upper bound of a probability, rounded up. */
  public static String atMost(double share) {
    return Double.isFinite(share) ? percent(share, RoundingMode.CEILING) : UNKNOWN;
  }

  /** A lower bound of a probability, rounded down. */
  public static String atLeast(double share) {
    return Double.isFinite(share) ? percent(share, RoundingMode.FLOOR) : UNKNOWN;
  }

  /** A share in small numbers, to the nearest: "1 in 40", "3 in 10", "19 in 20". */
  public static String part(double share) {
    if (!Double.isFinite(share)) {
      return UNKNOWN;
    }
    if (share > FEW && share < 1 - FEW) {
      return Math.round(10 * share) + " in 10";
    }
    boolean few = share <= FEW;
    double of = 1 / Math.max(few ? share : rest(share), 1e-9);
    if (of > MOST_PARTS) {
      return few ? "under 1 in " + MOST_PARTS : "over " + (MOST_PARTS - 1) + " in " + MOST_PARTS;
    }
    long whole = twoDigits(Math.round(of), RoundingMode.HALF_UP);
    return (few ? 1 : whole - 1) + " in " + whole;
  }

  /**
   * An upper bound of a share in small numbers, never too low: "1 in 40", "3 in 10", "19 in 20".
   */
  public static String partAtMost(double share) {
    if (!Double.isFinite(share)) {
      return UNKNOWN;
    }
    if (share <= FEW) {
      return "1 in " + oneInAtLeast(share);
    }
    if (share <= 1 - FEW) {
      return (long) Math.ceil(10 * share) + " in 10";
    }
    long of = oneInAtMost(rest(share));
    return of > MOST_PARTS ? ALL : (of - 1) + " in " + of;
  }

  /** A lower bound of a share in small numbers, never too high. */
  public static String partAtLeast(double share) {
    if (!Double.isFinite(share)) {
      return UNKNOWN;
    }
    if (share >= 1 - FEW) {
      long of = oneInAtLeast(rest(share));
      return (of - 1) + " in " + of;
    }
    if (share >= FEW) {
      return (long) Math.floor(10 * share) + " in 10";
    }
    long of = oneInAtMost(share);
    return of > MOST_PARTS ? NONE : "1 in " + of;
  }

  /** The largest whole number of two digits, and 1000 at most, whose inverse is a share or more. */
  private static long oneInAtLeast(double share) {
    long of = (long) Math.min(MOST_PARTS, Math.floor(1 / Math.max(share, 1e-9)));
    while (of > 1 && 1.0 / of < share) {
      of--;
    }
    return twoDigits(of, RoundingMode.FLOOR);
  }

  /** The smallest whole number of two digits whose inverse is a share or less. */
  private static long oneInAtMost(double share) {
    double of = Math.ceil(1 / Math.max(share, 1e-9));
    while (1 / of > share && of <= MOST_PARTS) {
      of++;
    }
    return of > MOST_PARTS ? (long) of : twoDigits((long) of, RoundingMode.CEILING);
  }

  /** 1 less a share, as its decimals have it. */
  private static double rest(double share) {
    return BigDecimal.ONE.subtract(decimal(share)).doubleValue();
  }

  private static long twoDigits(long value, RoundingMode mode) {
    return new BigDecimal(value).round(new MathContext(2, mode)).longValueExact();
  }

  /** Both bounds of a probability, "3.2 % to 12 %". */
  public static String percentBounds(double low, double high) {
    return atLeast(low) + " to " + atMost(high);
  }

  private static String percent(double share, RoundingMode mode) {
    BigDecimal percent = decimal(share).movePointRight(2);
    boolean nearAnEnd = share < 0.0995 || share > 0.99;
    return stripped(percent.setScale(nearAnEnd ? 1 : 0, mode)) + " %";
  }

  /** A spread in natural logarithms: "38 %", or "a factor 3.2" where it is wide. */
  public static String within(double lnSpread) {
    return lnSpread > WIDE
        ? "a factor " + digits(Math.exp(lnSpread), 2)
        : digits(100 * Math.expm1(lnSpread), 2) + " %";
  }

  /** "1 patch", "2 patches". */
  public static String count(long number, String one, String many) {
    return number + " " + (number == 1 ? one : many);
  }

  /** "1 pass", "3 passes". */
  public static String passes(long number) {
    return count(number, "pass", "passes");
  }

  /** "1 patch", "24 patches". */
  public static String patches(long number) {
    return count(number, "patch", "patches");
  }

  /** "1 board", "4 boards". */
  public static String boards(long number) {
    return count(number, "board", "boards");
  }

  /** Digits of a number, whole from 10 to their power less one up. */
  private static String rounded(double value, int digits, RoundingMode mode) {
    if (!Double.isFinite(value)) {
      return DASH;
    }
    BigDecimal exact = decimal(value);
    int whole = exact.precision() - exact.scale();
    return stripped(
        whole >= digits ? exact.setScale(0, mode) : exact.round(new MathContext(digits, mode)));
  }

  private static BigDecimal decimal(double value) {
    return BigDecimal.valueOf(value);
  }

  private static String stripped(BigDecimal value) {
    return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
  }
}
