package charline.plan;

import charline.exposure.Exposure;
import charline.window.Bench;

/**
 * Power and speed that a person can dial, with what they do.
 *
 * @param powerPercent power on the dial
 * @param speedMillimetresPerSecond hand or scan speed
 * @param lnDose natural logarithm of the dose per pass in J/cm²
 * @param lnIntensity natural logarithm of fluence (J/cm²) or irradiance (W/cm²)
 */
public record Setting(
    double powerPercent, double speedMillimetresPerSecond, double lnDose, double lnIntensity) {
  static Setting on(Bench bench, double powerPercent, double speed) {
    Exposure exposure = bench.exposure(powerPercent, speed);
    return new Setting(
        powerPercent, speed, Math.log(exposure.doseJoulesPerCm2()), Math.log(exposure.intensity()));
  }

  public double doseJoulesPerCm2() {
    return Math.exp(lnDose);
  }

  public double intensity() {
    return Math.exp(lnIntensity);
  }
}
