package charline.wording;

import charline.quantity.Figures;
import charline.window.CharredSpots;

/** Charred spots to expect on a square metre, which stand beside every char risk. */
public final class SpotsText {
  private SpotsText() {}

  /** "3.2 charred spots per m², at most 14". */
  public static String of(CharredSpots spots) {
    return "%s charred spots per m², at most %s"
        .formatted(Figures.three(spots.mean()), Figures.threeUp(spots.upper()));
  }

  /** "at most 16.7 charred spots per m²", of a limit or a bound of the risk. */
  static String atMost(double charRisk, double patchSquareCentimetres) {
    return "at most %s charred spots per m²"
        .formatted(
            Figures.threeUp(CharredSpots.of(patchSquareCentimetres, charRisk, charRisk).upper()));
  }

  static Json json(CharredSpots spots) {
    return new Json().put("mean", spots.mean()).atMost("upper", spots.upper());
  }
}
