package charline.exposure;

import charline.quantity.Invariant;
import charline.refusal.Refusal;

/**
 * What one pass does to the work: the two numbers that the models see.
 *
 * @param deliveredWatts mean power on the work
 * @param doseJoulesPerCm2 areal dose of one pass, D
 * @param intensity mean fluence of a pulse in J/cm² (pulsed) or mean irradiance in W/cm²
 *     (continuous), F; {@link Emission#intensityUnit()} names the unit
 * @param areaRate area covered in one pass per second
 */
public record Exposure(
    double deliveredWatts, double doseJoulesPerCm2, double intensity, AreaRate areaRate) {
  public Exposure {
    Invariant.positive("Delivered power", deliveredWatts, "W");
    Invariant.positive("Dose per pass", doseJoulesPerCm2, "J/cm2");
    Invariant.positive("Intensity", intensity, "");
  }

  /**
   * The exposure of one pass.
   *
   * @param emission kind of source
   * @param deliveredWatts mean power on the work, as the power checks have it
   * @param settings what was dialled in; pulsed sources need {@link Settings#pulses()}
   * @throws Refusal if a pulsed source has no repetition rate
   */
  public static Exposure of(Emission emission, double deliveredWatts, Settings settings) {
    return new Exposure(
        deliveredWatts,
        settings.form().dosePerPassJoulesPerCm2(deliveredWatts),
        intensity(emission, deliveredWatts, settings),
        settings.form().areaRate());
  }

  private static double intensity(Emission emission, double deliveredWatts, Settings settings) {
    return switch (emission) {
      case CONTINUOUS ->
          new ContinuousBeam(deliveredWatts, settings.spot()).meanIrradianceWattsPerCm2();
      case PULSED -> {
        Pulses pulses =
            settings
                .pulses()
                .orElseThrow(
                    () ->
                        Refusal.usage(
                            "A pulsed rig needs its repetition rate in kHz; none was given."));
        yield new PulsedBeam(deliveredWatts, pulses.repetitionKilohertz() * 1000, settings.spot())
            .meanFluenceJoulesPerCm2();
      }
    };
  }
}
