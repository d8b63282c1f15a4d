package charline.plan;

import charline.exposure.Exposure;
import charline.model.ModelFit;
import charline.window.Bench;
import charline.window.Predicted;

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

  /** The chance of an event by a number of passes on a new board. */
  Predicted predicted(ModelFit fit, int passes) {
    return Predicted.of(fit, doseJoulesPerCm2(), intensity(), passes);
  }

  public double doseJoulesPerCm2() {
    return Math.exp(lnDose);
  }

  public double intensity() {
    return Math.exp(lnIntensity);
  }
}
