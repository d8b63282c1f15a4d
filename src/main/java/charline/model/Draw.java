package charline.model;

import charline.stat.quadrature.NormalTrapezoid;

/**
 * One draw of a model's parameters.
 *
 * @param lnReference natural logarithm of the reference intensity F0
 * @param tau natural logarithm of the even-chance dose
 * @param phi weight of ln intensity
 * @param psi weight of ln passes
 * @param sigma spread of a single patch, in ln dose
 * @param omega spread between boards, in ln dose
 * @param wayWeights weights of the shifts, none where all patches are made in one way
 */
public record Draw(
    double lnReference,
    double tau,
    double phi,
    double psi,
    double sigma,
    double omega,
    double[] wayWeights) {
  /** A draw where all patches are made in one way. */
  public Draw(double lnReference, double tau, double phi, double psi, double sigma, double omega) {
    this(lnReference, tau, phi, psi, sigma, omega, new double[0]);
  }

  /**
   * A rule over the shift of a board, in units of ω.
   *
   * @param trials how many readings before and at the event its patches have
   */
  public NormalTrapezoid boardRule(int trials) {
    return NormalTrapezoid.forLogistic(trials, omega / sigma);
  }

  /**
   * By how much a setting lies above the even chance on an average board, in ln dose.
   *
   * @param lnDose natural logarithm of the dose per pass in J/cm²
   * @param lnIntensity natural logarithm of fluence or irradiance
   * @param wayStep values of the shifts, from those of the way that τ is for: see {@link
   *     Trials#waySteps}
   */
  public double margin(double lnDose, double lnIntensity, int passes, double[] wayStep) {
    double margin = lnDose + phi * (lnIntensity - lnReference) + psi * Math.log(passes) - tau;
    for (int k = 0; k < wayStep.length; k++) {
      margin -= wayWeights[k] * wayStep[k];
    }
    return margin;
  }
}
