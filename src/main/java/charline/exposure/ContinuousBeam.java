package charline.exposure;

import charline.quantity.Invariant;

/**
 * A continuous-wave beam on the work.
 *
 * @param powerWatts power delivered, above 0
 * @param spot the spot on the work
 */
public record ContinuousBeam(double powerWatts, Spot spot) {
  public ContinuousBeam {
    Invariant.positive("Power", powerWatts, "W");
  }

  /** Mean irradiance over the 1/e² disc, 4P / (π d²), in W/cm². */
  public double meanIrradianceWattsPerCm2() {
    return powerWatts / spot.areaSquareCentimetres();
  }

  /** Irradiance at the centre of a Gaussian spot: twice the mean, in W/cm². */
  public double centreIrradianceWattsPerCm2() {
    return 2 * meanIrradianceWattsPerCm2();
  }

  /** Energy laid down per length of line, P / v, in J/mm. */
  public double lineEnergyJoulesPerMillimetre(double spotSpeedMillimetresPerSecond) {
    return powerWatts / speed(spotSpeedMillimetresPerSecond);
  }

  /** Time for the spot to pass over a point, d / v, in s. */
  public double dwellSeconds(double spotSpeedMillimetresPerSecond) {
    return spot.oneOverESquaredMillimetres() / speed(spotSpeedMillimetresPerSecond);
  }

  /** Exposure on the centre line of one Gaussian line, √(2/π) P / (w v), in J/cm². */
  public double gaussianCentreLineJoulesPerCm2(double spotSpeedMillimetresPerSecond) {
    double radius = spot.oneOverESquaredMillimetres() / 2;
    return 100
        * Math.sqrt(2 / Math.PI)
        * powerWatts
        / (radius * speed(spotSpeedMillimetresPerSecond));
  }

  /** Exposure on the centre line of one line of a flat round spot, 4P / (π d v), in J/cm². */
  public double topHatCentreLineJoulesPerCm2(double spotSpeedMillimetresPerSecond) {
    return 100
        * 4
        * powerWatts
        / (Math.PI * spot.oneOverESquaredMillimetres() * speed(spotSpeedMillimetresPerSecond));
  }

  private static double speed(double millimetresPerSecond) {
    return Invariant.positive("Spot speed", millimetresPerSecond, "mm/s");
  }
}
