package charline.quantity;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers as the reasons and the advice say them. */
public final class PlainFigures {
  private PlainFigures() {}

  /** "38 %" for a spread of that share, "a factor 3.2" where it is wide. */
  public static String within(double lnSpread) {
    return lnSpread > 0.7
        ? "a factor " + figures(Math.exp(lnSpread), 2)
        : figures(100 * Math.expm1(lnSpread), 2) + " %";
  }

  public static String figures(double value, int digits) {
    return Invariant.plain(new BigDecimal(value).round(new MathContext(digits)).doubleValue());
  }

  public static String percent(double share) {
    return figures(100 * share, share >= 0.995 ? 3 : 2) + " %";
  }

  public static String count(long n, String one, String many) {
    return n + " " + (n == 1 ? one : many);
  }
}
