package charline.exposure;

import charline.quantity.Invariant;

/**
 * Spot speed and line spacing, as set on a scanner that is not moved by hand.
 *
 * @param spotSpeedMillimetresPerSecond mean speed of the spot, v, above 0
 * @param lineSpacingMillimetres distance between neighbouring lines, h, above 0
 */
public record LineScan(double spotSpeedMillimetresPerSecond, double lineSpacingMillimetres)
    implements DoseForm {
  public LineScan {
    Invariant.positive("Spot speed", spotSpeedMillimetresPerSecond, "mm/s");
    Invariant.positive("Line spacing", lineSpacingMillimetres, "mm");
  }

  /** v h. */
  @Override
  public AreaRate areaRate() {
    return new AreaRate(spotSpeedMillimetresPerSecond * lineSpacingMillimetres / 100);
  }

  /** Distance between neighbouring pulses on a line, v / f, in mm. */
  public double pulsePitchMillimetres(double repetitionRateHertz) {
    return spotSpeedMillimetresPerSecond / rate(repetitionRateHertz);
  }

  /** Overlap of neighbouring pulses, 1 - v / (f d); negative means gaps between dots. */
  public double overlapAlongLine(double repetitionRateHertz, Spot spot) {
    return 1 - pulsePitchMillimetres(repetitionRateHertz) / spot.oneOverESquaredMillimetres();
  }

  /** Pulses that a point on one line receives, f d / v. */
  public double pulsesPerSpot(double repetitionRateHertz, Spot spot) {
    return spot.oneOverESquaredMillimetres() / pulsePitchMillimetres(repetitionRateHertz);
  }

  /** Overlap of neighbouring lines, 1 - h / d; negative means gaps between lines. */
  public double lineOverlap(Spot spot) {
    return 1 - lineSpacingMillimetres / spot.oneOverESquaredMillimetres();
  }

  /** Lines that a point receives, d / h. */
  public double linesPerSpot(Spot spot) {
    return spot.oneOverESquaredMillimetres() / lineSpacingMillimetres;
  }

  private static double rate(double hertz) {
    return Invariant.positive("Repetition rate", hertz, "Hz");
  }
}
