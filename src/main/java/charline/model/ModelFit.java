package charline.model;

/**
 * One fitted event: the posterior in numbers with units, and how well it could be computed.
 *
 * @param event char or clearing
 * @param tau natural logarithm of the even-chance dose
 * @param phi weight of ln intensity
 * @param psi weight of ln passes
 * @param sigma spread of a single patch, in ln dose
 * @param omega spread between boards, in ln dose
 * @param evenDoseJoulesPerCm2 one-pass dose with an even chance at the reference intensity,
 *     exp(tau)
 * @param referenceIntensity F0: geometric mean fluence (J/cm²) or irradiance (W/cm²) of the trials
 * @param paretoK Pareto k-hat of the sampling weights; above 0.7 the numbers are not to be trusted
 * @param draws posterior draws used
 * @param effectiveDraws draws after weighting
 * @param method how the posterior was computed, in words
 * @param posterior the draws themselves
 * @param sturdier the same draws under {@link Prior#sturdier()}, which promises have to survive too
 */
public record ModelFit(
    Event event,
    Estimate tau,
    Estimate phi,
    Estimate psi,
    Estimate sigma,
    Estimate omega,
    Estimate evenDoseJoulesPerCm2,
    double referenceIntensity,
    double paretoK,
    int draws,
    double effectiveDraws,
    String method,
    Posterior posterior,
    Posterior sturdier) {

  /** k-hat above which importance sampling has failed (Vehtari et al. 2024). */
  public static final double PARETO_K_LIMIT = 0.7;

  public boolean reliable() {
    return paretoK <= PARETO_K_LIMIT;
  }
}
