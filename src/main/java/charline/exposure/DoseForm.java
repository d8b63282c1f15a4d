package charline.exposure;

import charline.quantity.Invariant;

/**
 * The three ways a person can know how fast the light was spread. Each gives the area covered per
 * second, and with the power the areal dose of one pass; the spot size cancels.
 */
public sealed interface DoseForm permits LineScan, HandPass, TimedArea {
  /** Area covered in one pass per second. */
  AreaRate areaRate();

  /** Areal dose of one pass, P / area rate, in J/cm². */
  default double dosePerPassJoulesPerCm2(double deliveredWatts) {
    return Invariant.positive("Delivered power", deliveredWatts, "W")
        / areaRate().squareCentimetresPerSecond();
  }
}
