package charline.shops;

import java.util.Locale;
import org.apache.commons.math3.stat.interval.ClopperPearsonInterval;
import org.apache.commons.math3.stat.interval.ConfidenceInterval;

/**
 * So many of so many, with exact one-sided 95 % bounds (Clopper and Pearson 1934, Biometrika
 * 26:404-413).
 */
record Share(int count, int of) {
  /** Each side of a two-sided 90 % interval is a one-sided 95 % bound. */
  private static final double TWO_SIDED = 0.90;

  double value() {
    return of == 0 ? Double.NaN : (double) count / of;
  }

  double lower() {
    return count == 0 || of == 0 ? 0 : interval().getLowerBound();
  }

  double upper() {
    return count == of ? 1 : interval().getUpperBound();
  }

  private ConfidenceInterval interval() {
    return new ClopperPearsonInterval().createInterval(of, count, TWO_SIDED);
  }

  /** True if the share is above a number beyond doubt. */
  boolean surelyAbove(double number) {
    return of > 0 && lower() > number;
  }

  /** Such as {@code 3 of 40 (2 to 18 %)}. */
  String words() {
    return of == 0
        ? "none"
        : String.format(
            Locale.ROOT, "%d of %d (%.0f to %.0f %%)", count, of, 100 * lower(), 100 * upper());
  }
}
