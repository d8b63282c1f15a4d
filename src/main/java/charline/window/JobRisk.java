package charline.window;

import charline.quantity.Invariant;
import charline.refusal.Refusal;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a small risk per patch-sized area comes to over a whole job of m such areas: the chance of
 * at least one char mark, 1 - (1 - p)^m, and the marks to expect, m p.
 *
 * <p>The bounds carry over exactly, since both grow with p. The mean puts the posterior mean of p
 * into a concave function, so it is never below the posterior mean of the job's risk; and areas on
 * one board share that board's luck, which makes fewer but worse boards. Both errors are on the
 * safe side.
 *
 * @param areaSquareMetres area of the job, above 0
 * @param patchSquareCentimetres size of one area, above 0
 * @param areas m, rounded up to whole areas
 * @param mean chance of at least one char mark at the mean risk per area
 * @param upper chance of at least one char mark at the upper bound of the risk per area
 * @param marksMean areas with a char mark to expect at the mean risk
 * @param marksUpper areas with a char mark to expect at the upper bound
 * @param asked highest chance of any char mark that was asked for, if any
 */
public record JobRisk(
    double areaSquareMetres,
    double patchSquareCentimetres,
    long areas,
    double mean,
    double upper,
    double marksMean,
    double marksUpper,
    OptionalDouble asked) {
  /**
   * Size of a patch where none was recorded: 50 mm square (common practice, no published source).
   */
  public static final double USUAL_PATCH_SQUARE_CENTIMETRES = 25;

  /**
   * The risk of a job from the risk of one area.
   *
   * @param areaSquareMetres area of the job, above 0
   * @param patchSquareCentimetres size of the area that the risk is about, above 0
   * @param charRiskMean mean char risk per area, 0 to 1
   * @param charRiskUpper upper bound of that risk, 0 to 1
   * @throws Refusal saying which of these does not hold
   */
  public static JobRisk of(
      double areaSquareMetres,
      double patchSquareCentimetres,
      double charRiskMean,
      double charRiskUpper) {
    Invariant.positive("Area of the job", areaSquareMetres, "m2");
    Invariant.positive("Patch size", patchSquareCentimetres, "cm2");
    Invariant.within("Char risk", charRiskMean, 0, 1, "");
    Invariant.within("Char risk", charRiskUpper, 0, 1, "");
    long areas = areas(areaSquareMetres, patchSquareCentimetres);
    return new JobRisk(
        areaSquareMetres,
        patchSquareCentimetres,
        areas,
        atLeastOne(charRiskMean, areas),
        atLeastOne(charRiskUpper, areas),
        areas * charRiskMean,
        areas * charRiskUpper,
        OptionalDouble.empty());
  }

  /** The risk of a job done at the start setting; empty where there is no start setting. */
  public static Optional<JobRisk> of(Recommendation recommendation, double areaSquareMetres) {
    return recommendation
        .chosen()
        .map(Box::start)
        .map(
            start ->
                of(
                    areaSquareMetres,
                    recommendation.patchSquareCentimetres(),
                    start.charRiskMean(),
                    start.charRiskUpper()));
  }

  /** The same with the limit that was asked for. */
  public static Optional<JobRisk> of(Recommendation recommendation, JobLimit limit) {
    return of(recommendation, limit.areaSquareMetres()).map(risk -> risk.with(limit.charRisk()));
  }

  /** The risk of a job done at a setting with this risk per area, with the limit asked for. */
  public static JobRisk of(
      JobLimit limit, double patchSquareCentimetres, double charRiskMean, double charRiskUpper) {
    return of(limit.areaSquareMetres(), patchSquareCentimetres, charRiskMean, charRiskUpper)
        .with(limit.charRisk());
  }

  private JobRisk with(OptionalDouble limit) {
    return new JobRisk(
        areaSquareMetres, patchSquareCentimetres, areas, mean, upper, marksMean, marksUpper, limit);
  }

  /** Whole patch-sized areas of a job, a part of one counted as one. */
  static long areas(double areaSquareMetres, double patchSquareCentimetres) {
    // 0.25 m2 is 100 areas of 25 cm2, not 101 because 2500.0000000000005 / 25 is above 100.
    return Math.max(1, (long) Math.ceil(areaSquareMetres * 1e4 / patchSquareCentimetres - 1e-9));
  }

  private static double atLeastOne(double risk, long areas) {
    return -Math.expm1(areas * Math.log1p(-risk)); // exact for a tiny risk and many areas
  }
}
