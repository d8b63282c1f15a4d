package charline.paper;

import charline.quantity.Figures;
import charline.window.Range;
import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * A knob's range and start as printed. The ends are rounded inwards, so that the printed range
 * never reaches outside the range that was worked out, and as coarsely as keeps the start inside
 * it.
 *
 * @param start printed start
 * @param low printed low end
 * @param high printed high end
 */
record KnobFigures(String start, String low, String high) {
  private static final int FINER_AT_MOST = 4;

  /** In whole steps where the range is wide enough, as on a dial in %. */
  static KnobFigures whole(Range range, double start) {
    return from(range, start, 0);
  }

  /** In two significant digits where the range is wide enough, in more where it is not. */
  static KnobFigures significant(Range range, double start) {
    return from(range, start, 1 - (int) Math.floor(Math.log10(start)));
  }

  private static KnobFigures from(Range range, double start, int coarsest) {
    for (int decimals = coarsest; decimals <= coarsest + FINER_AT_MOST; decimals++) {
      BigDecimal low = rounded(range.low(), decimals, RoundingMode.CEILING);
      BigDecimal high = rounded(range.high(), decimals, RoundingMode.FLOOR);
      BigDecimal middle = rounded(start, decimals, RoundingMode.HALF_UP);
      if (low.compareTo(high) < 0 && low.compareTo(middle) <= 0 && middle.compareTo(high) <= 0) {
        return new KnobFigures(middle.toPlainString(), low.toPlainString(), high.toPlainString());
      }
    }
    return new KnobFigures(
        Figures.shortest(start), Figures.shortest(range.low()), Figures.shortest(range.high()));
  }

  private static BigDecimal rounded(double value, int decimals, RoundingMode mode) {
    return BigDecimal.valueOf(value).setScale(decimals, mode);
  }
}
