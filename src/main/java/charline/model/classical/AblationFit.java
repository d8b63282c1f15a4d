package charline.model.classical;

import java.util.OptionalDouble;

/**
 * Depth per pulse = (1/alpha) ln(F / Fth), by least squares.
 *
 * @param patches points, one per patch
 * @param lowestFluence of the points, J/cm²
 * @param highestFluence of the points, J/cm²
 * @param micrometresPerEFold 1/alpha: depth per pulse gained by each factor e of fluence
 * @param micrometresPerEFoldError its standard error
 * @param thresholdJoulesPerCm2 Fth
 * @param threshold Fieller's limits on Fth; a side that the depths leave open is empty
 * @param confidence two-sided, of those limits
 * @param steepness how badly the slope is known, Fieller's g; 1 or more leaves a side open
 * @param scatterMicrometres standard deviation of depth per pulse about the line
 * @param rSquared share of the scatter that the line explains
 * @param fewestPulses pulses on a point in one pass, the fewest of the points
 * @param mostPulses and the most
 */
public record AblationFit(
    int patches,
    double lowestFluence,
    double highestFluence,
    double micrometresPerEFold,
    double micrometresPerEFoldError,
    double thresholdJoulesPerCm2,
    Limits threshold,
    double confidence,
    double steepness,
    double scatterMicrometres,
    double rSquared,
    double fewestPulses,
    double mostPulses)
    implements AblationOutcome {

  /** Both sides of the threshold are open, or the set falls into two parts. */
  public boolean unbounded() {
    return threshold.low().isEmpty() || threshold.high().isEmpty();
  }

  /** Where only the upper side is bounded. */
  public OptionalDouble atMost() {
    return threshold.high();
  }
}
