package charline.window;

/**
 * Charred spots to expect on a square metre, a spot being one patch-sized area with any char: its
 * risk times the number of such areas in 1 m², 10,000 cm² over the size of a patch.
 *
 * @param mean spots at the mean risk, which is the mean over the posterior
 * @param upper spots at the upper bound of the risk
 */
public record CharredSpots(double mean, double upper) {
  private static final double SQUARE_CENTIMETRES = 1e4;

  /**
   * @param patchSquareCentimetres size of the area that the risk is about, above 0
   * @param charRiskMean mean char risk per area
   * @param charRiskUpper upper bound of that risk
   */
  public static CharredSpots of(
      double patchSquareCentimetres, double charRiskMean, double charRiskUpper) {
    double areas = SQUARE_CENTIMETRES / patchSquareCentimetres;
    return new CharredSpots(areas * charRiskMean, areas * charRiskUpper);
  }
}
