package charline.wording;

import charline.quantity.Figures;

/** Lines that do not touch, in words. */
public final class StripesText {
  private StripesText() {}

  /**
   * A sentence.
   *
   * @param spacingMillimetres from line to line
   * @param spotMillimetres diameter of the spot (1/e²)
   */
  public static String of(double spacingMillimetres, double spotMillimetres) {
    return "The lines lie %s mm apart under a spot of %s mm: they do not touch, so they leave stripes of finish."
        .formatted(Figures.three(spacingMillimetres), Figures.three(spotMillimetres));
  }
}
