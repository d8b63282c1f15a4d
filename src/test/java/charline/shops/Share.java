package charline.shops;

import charline.stat.interval.ClopperPearson;
import java.util.Locale;

/**
 * So many of so many, with exact one-sided 95 % bounds (Clopper and Pearson 1934, Biometrika
 * 26:404-413).
 */
public record Share(int count, int of) {
  private static final double CONFIDENCE = 0.95;

  double value() {
    return of == 0 ? Double.NaN : (double) count / of;
  }

  double lower() {
    return of == 0 ? 0 : new ClopperPearson(count, of).atLeast(CONFIDENCE);
  }

  double upper() {
    return of == 0 ? 1 : new ClopperPearson(count, of).atMost(CONFIDENCE);
  }

  /** True if the share is above a number beyond doubt. */
  public boolean surelyAbove(double number) {
    return of > 0 && lower() > number;
  }

  /** Such as {@code 3 of 40 (2 to 18 %)}. */
  public String words() {
    return of == 0
        ? "none"
        : String.format(
            Locale.ROOT, "%d of %d (%.0f to %.0f %%)", count, of, 100 * lower(), 100 * upper());
  }
}
