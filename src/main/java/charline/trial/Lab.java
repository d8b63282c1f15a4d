package charline.trial;

/**
 * A colour in CIE 1976 L*a*b* (CIE 15:2004), as a colour meter shows it.
 *
 * @param lightness L*, 0 for black to 100 for white
 * @param redness a*, green below 0
 * @param yellowness b*, blue below 0
 */
public record Lab(double lightness, double redness, double yellowness) {
  public Lab {
    if (!(lightness >= 0 && lightness <= 100)) {
      throw new IllegalArgumentException(
          "Lightness must be between 0 and 100, not " + lightness + ".");
    }
    if (!Double.isFinite(redness) || !Double.isFinite(yellowness)) {
      throw new IllegalArgumentException(
          "a* and b* must be finite numbers, not " + redness + " and " + yellowness + ".");
    }
  }
}
