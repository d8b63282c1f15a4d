package charline.exposure;

import charline.quantity.Figures;
import charline.quantity.Invariant;

/**
 * Depth per pulse above a threshold, (1/α) ln(F / Fth): Beer-Lambert absorption with a fixed energy
 * need at the ablated depth (Bäuerle, Laser Processing and Chemistry).
 *
 * @param absorptionPerMicrometre effective α, above 0
 * @param thresholdJoulesPerCm2 threshold fluence Fth, above 0
 */
public record AblationLaw(double absorptionPerMicrometre, double thresholdJoulesPerCm2) {
  public AblationLaw {
    Invariant.positive("Effective absorption", absorptionPerMicrometre, "per um");
    Invariant.positive("Threshold fluence", thresholdJoulesPerCm2, "J/cm2");
  }

  /** Depth removed by one pulse, in µm; 0 at or below the threshold. */
  public double depthPerPulseMicrometres(double fluenceJoulesPerCm2) {
    Invariant.positive("Fluence", fluenceJoulesPerCm2, "J/cm2");
    return Math.max(0, Math.log(fluenceJoulesPerCm2 / thresholdJoulesPerCm2))
        / absorptionPerMicrometre;
  }

  /**
   * Pulses per point that lift a coat, a real number: round up for whole pulses.
   *
   * @throws IllegalArgumentException if the fluence does not pass the threshold
   */
  public double pulsesToClear(double coatMicrometres, double fluenceJoulesPerCm2) {
    double depth = depthPerPulseMicrometres(fluenceJoulesPerCm2);
    if (depth == 0) {
      throw new IllegalArgumentException(
          "Fluence must pass the threshold of %s J/cm2 to remove anything, not %s J/cm2."
              .formatted(Figures.plain(thresholdJoulesPerCm2), Figures.plain(fluenceJoulesPerCm2)));
    }
    return Invariant.positive("Coat thickness", coatMicrometres, "um") / depth;
  }

  /**
   * The law after many pulses on one place: Fth(N) = Fth(1) N^(S-1) (Jee, Becker and Walser 1988,
   * JOSA B 5:648).
   *
   * @param incubation S, 1 for none, below 1 where damage builds up
   */
  public AblationLaw after(int pulses, double incubation) {
    if (pulses < 1) {
      throw new IllegalArgumentException("Pulses must be 1 or more, not " + pulses + ".");
    }
    return new AblationLaw(
        absorptionPerMicrometre, thresholdJoulesPerCm2 * Math.pow(pulses, incubation - 1));
  }

  /**
   * Width of the crater one Gaussian pulse leaves, √(2 w² ln(F0 / Fth)) (Liu 1982, Opt. Lett.
   * 7:196), in the unit of the radius; 0 below threshold.
   *
   * @param oneOverESquaredRadius w
   * @param peakFluenceJoulesPerCm2 F0 at the centre
   */
  public double craterDiameter(double oneOverESquaredRadius, double peakFluenceJoulesPerCm2) {
    double excess = Math.log(peakFluenceJoulesPerCm2 / thresholdJoulesPerCm2);
    return excess <= 0 ? 0 : oneOverESquaredRadius * Math.sqrt(2 * excess);
  }
}
