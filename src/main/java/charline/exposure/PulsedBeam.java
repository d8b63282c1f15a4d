package charline.exposure;

import charline.quantity.Invariant;

/**
 * A pulsed beam on the work.
 *
 * @param meanPowerWatts mean power delivered, above 0
 * @param repetitionRateHertz pulses per second, above 0
 * @param spot the spot on the work
 */
public record PulsedBeam(double meanPowerWatts, double repetitionRateHertz, Spot spot) {
  /** Peak of a Gaussian pulse over energy/FWHM: 2 √(ln 2 / π) = 0.939437. */
  private static final double GAUSSIAN_PEAK = 2 * Math.sqrt(Math.log(2) / Math.PI);

  public PulsedBeam {
    Invariant.positive("Mean power", meanPowerWatts, "W");
    Invariant.positive("Repetition rate", repetitionRateHertz, "Hz");
  }

  /** Pulse energy E = P / f, in J (ISO 11145). */
  public double pulseEnergyJoules() {
    return meanPowerWatts / repetitionRateHertz;
  }

  /** Mean fluence of one pulse over the 1/e² disc, 4E / (π d²), in J/cm². */
  public double meanFluenceJoulesPerCm2() {
    return pulseEnergyJoules() / spot.areaSquareCentimetres();
  }

  /** Fluence at the centre of a Gaussian spot: exactly twice the mean, in J/cm². */
  public double peakFluenceJoulesPerCm2() {
    return 2 * meanFluenceJoulesPerCm2();
  }

  /** Mean pulses that a point receives in one pass over an area, π d² f / (4 Ȧ). */
  public double pulsesPerPoint(AreaRate rate) {
    return spot.areaSquareCentimetres() * repetitionRateHertz / rate.squareCentimetresPerSecond();
  }

  /** Top power of a pulse that is Gaussian in time, {@code pulseSeconds} being its FWHM, in W. */
  public double gaussianPeakPowerWatts(double pulseSeconds) {
    return GAUSSIAN_PEAK
        * pulseEnergyJoules()
        / Invariant.positive("Pulse duration", pulseSeconds, "s");
  }
}
