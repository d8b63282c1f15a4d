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

  /** Time for the spot to pass over a point, d / v, in s. */
  public double dwellSeconds(double spotSpeedMillimetresPerSecond) {
    return spot.oneOverESquaredMillimetres()
        / Invariant.positive("Spot speed", spotSpeedMillimetresPerSecond, "mm/s");
  }
}
