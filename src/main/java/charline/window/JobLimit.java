package charline.window;

import charline.quantity.Figures;
import charline.quantity.Invariant;
import charline.refusal.Refusal;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.OptionalDouble;

/**
 * A job whose risk is asked for.
 *
 * @param areaSquareMetres area of the job, above 0
 * @param charRisk highest chance of any charred spot on all of it, above 0 and below 1; empty where
 *     the limit is that of a patch-sized area
 */
public record JobLimit(double areaSquareMetres, OptionalDouble charRisk) {
  private static final MathContext THREE_DIGITS_DOWN = new MathContext(3, RoundingMode.FLOOR);

  public JobLimit {
    Invariant.positive("Area of the job", areaSquareMetres, "m2");
    if (charRisk.isPresent()) {
      Invariant.within("Char risk of the job", 100 * charRisk.getAsDouble(), 0.1, 50, "%");
    }
  }

  /**
   * The limit of one patch-sized area that keeps that of the job: 1 - (1 - r)^(1/m) for m areas.
   * That takes every area for one on a board of its own, which is on the safe side: areas on one
   * board share its luck, and by Jensen's inequality the chance that all of them stay without char
   * is then no smaller. Rounded down to three digits.
   *
   * @param patchSquareCentimetres size of one area, above 0
   */
  public Requirements with(Requirements asked, double patchSquareCentimetres) {
    if (charRisk.isEmpty()) {
      return asked;
    }
    long areas = JobRisk.areas(areaSquareMetres, patchSquareCentimetres);
    double exact = -Math.expm1(Math.log1p(-charRisk.getAsDouble()) / areas);
    double each = new BigDecimal(exact).round(THREE_DIGITS_DOWN).doubleValue();
    if (each < Requirements.LEAST_CHAR_RISK) {
      throw Refusal.usage(
          "A job of %s m² at %s is a char risk of %s %% for each of its %s, below the %s %% that can be asked; ask for less area, or allow more."
              .formatted(
                  Figures.shortest(areaSquareMetres),
                  Figures.share(charRisk.getAsDouble()),
                  Figures.digits(100 * each, 2),
                  Figures.count(areas, "patch-sized area", "patch-sized areas"),
                  Figures.plain(100 * Requirements.LEAST_CHAR_RISK)));
    }
    return asked.withCharRisk(each);
  }
}
