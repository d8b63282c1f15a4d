package charline.exposure;

import charline.quantity.Invariant;

/**
 * How the spot grows away from focus (beam propagation of ISO 11146-1).
 *
 * @param waistDiameterMillimetres 1/e² diameter at focus, d0
 * @param beamQuality M², 1 or more
 * @param wavelengthMicrometres wavelength
 */
public record Focus(
    double waistDiameterMillimetres, double beamQuality, double wavelengthMicrometres) {
  public Focus {
    Invariant.positive("Spot diameter at focus", waistDiameterMillimetres, "mm");
    Invariant.positive("Wavelength", wavelengthMicrometres, "um");
    Invariant.within("Beam quality M2", beamQuality, 1, 1e6, "");
  }

  /** Rayleigh length π w0² / (M² λ), in mm. */
  public double rayleighLengthMillimetres() {
    double waistRadius = waistDiameterMillimetres / 2;
    return Math.PI * waistRadius * waistRadius / (beamQuality * wavelengthMicrometres / 1000);
  }

  /** The spot at a distance from focus, d0 √(1 + (z / zR)²). */
  public Spot at(double offFocusMillimetres) {
    double z = offFocusMillimetres / rayleighLengthMillimetres();
    return new Spot(
        waistDiameterMillimetres * Math.sqrt(1 + z * z), SpotDefinition.ONE_OVER_E_SQUARED);
  }

  /** Fluence at a distance from focus over fluence at focus. */
  public double relativeFluence(double offFocusMillimetres) {
    double z = offFocusMillimetres / rayleighLengthMillimetres();
    return 1 / (1 + z * z);
  }
}
