package charline.exposure;

import charline.quantity.Invariant;

/**
 * Area covered per time.
 *
 * @param squareCentimetresPerSecond above 0
 */
public record AreaRate(double squareCentimetresPerSecond) {
  public AreaRate {
    Invariant.positive("Area rate", squareCentimetresPerSecond, "cm2/s");
  }

  /** In m²/h: 1 cm²/s is 0.36 m²/h. */
  public double squareMetresPerHour() {
    return squareCentimetresPerSecond * 0.36;
  }

  /** In cm²/min. */
  public double squareCentimetresPerMinute() {
    return squareCentimetresPerSecond * 60;
  }

  /** What is left when every place is gone over {@code passes} times. */
  public AreaRate netOf(int passes) {
    if (passes < 1) {
      throw new IllegalArgumentException("Passes must be 1 or more, not " + passes + ".");
    }
    return new AreaRate(squareCentimetresPerSecond / passes);
  }

  /**
   * What is left when strokes side by side overlap: the head moves on by less than its width.
   *
   * @param share of the width of a stroke that the next one covers again, 0 to 0.5
   */
  public AreaRate overlapping(double share) {
    return new AreaRate(squareCentimetresPerSecond * (1 - share));
  }

  /**
   * Hours with the beam on to cover an area.
   *
   * @param squareMetres area of the job, above 0
   * @param handEfficiency share of the time in which the beam is at work, above 0 and up to 1
   */
  public double hoursFor(double squareMetres, double handEfficiency) {
    Invariant.positive("Area", squareMetres, "m2");
    Invariant.positive("Hand efficiency", handEfficiency, "");
    Invariant.within("Hand efficiency", handEfficiency, 0, 1, "");
    return squareMetres / (squareMetresPerHour() * handEfficiency);
  }
}
