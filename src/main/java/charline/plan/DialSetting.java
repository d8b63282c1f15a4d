package charline.plan;

import charline.exposure.Exposure;
import charline.model.ModelFit;
import charline.window.PredictedChance;
import charline.window.RigSetup;

/**
 * Power and speed that a person can dial, with what they do.
 *
 * @param powerPercent power on the dial
 * @param speedMillimetresPerSecond hand or scan speed
 * @param lnDose natural logarithm of the dose per pass in J/cm²
 * @param lnIntensity natural logarithm of fluence (J/cm²) or irradiance (W/cm²)
 */
public record DialSetting(
    double powerPercent, double speedMillimetresPerSecond, double lnDose, double lnIntensity) {
  private static final double HAND = 1.05;

  static DialSetting on(RigSetup bench, double powerPercent, double speed) {
    Exposure exposure = bench.exposure(powerPercent, speed);
    return new DialSetting(
        powerPercent, speed, Math.log(exposure.doseJoulesPerCm2()), Math.log(exposure.intensity()));
  }

  /**
   * True if no hand can tell the two apart: power and speed are within 5 % of each other (common
   * practice, no published source).
   */
  boolean feelsLike(DialSetting other) {
    return near(powerPercent, other.powerPercent)
        && near(speedMillimetresPerSecond, other.speedMillimetresPerSecond);
  }

  private static boolean near(double one, double other) {
    return Math.max(one, other) <= HAND * Math.min(one, other);
  }

  /** The chance of an event by a number of passes on a new board. */
  PredictedChance predicted(ModelFit fit, int passes) {
    return PredictedChance.of(fit, doseJoulesPerCm2(), intensity(), passes);
  }

  public double doseJoulesPerCm2() {
    return Math.exp(lnDose);
  }

  public double intensity() {
    return Math.exp(lnIntensity);
  }
}
