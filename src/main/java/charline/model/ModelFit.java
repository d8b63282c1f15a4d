package charline.model;

import charline.model.way.Coating;
import charline.model.way.Way;
import charline.model.way.WayDesign;
import charline.stat.sampling.WeightedDraws;
import java.util.List;
import java.util.Optional;

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
 * @param ways shifts of the model, and the way of working that τ and all doses are for
 * @param wayEffects what each was found to count; empty where all trials were made in one way
 * @param borrowed what was borrowed from other trials, if anything
 * @param posterior the draws themselves
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
    WayDesign ways,
    List<WayEffect> wayEffects,
    Optional<BorrowedPrior.Used> borrowed,
    Posterior posterior) {

  /** k-hat above which importance sampling has failed (Vehtari et al. 2024). */
  public static final double PARETO_K_LIMIT = 0.7;

  public ModelFit {
    wayEffects = List.copyOf(wayEffects);
  }

  /**
   * Reads the numbers off weighted draws in the coordinates of {@link PassesToEvent}.
   *
   * @param prior that the draws were made under
   */
  static ModelFit of(
      Event event,
      WeightedDraws draws,
      Prior prior,
      double kHat,
      String method,
      double lnReference,
      WayDesign ways,
      Optional<BorrowedPrior.Used> borrowed) {
    Posterior posterior = new Posterior(draws, lnReference, prior, ways.row(ways.way()));
    return new ModelFit(
        event,
        posterior.tau(),
        posterior.phi(),
        posterior.psi(),
        posterior.sigma(),
        posterior.omega(),
        posterior.evenDoseJoulesPerCm2(),
        Math.exp(lnReference),
        kHat,
        draws.size(),
        draws.effectiveSize(),
        method,
        ways,
        WayEffect.of(ways, posterior),
        borrowed,
        posterior);
  }

  /**
   * The dose of a promise about a new board, as natural logarithm of J/cm² per pass: for char the
   * highest at which its chance stays at or below {@code chance}, for clearing the lowest at which
   * it stays at or above, with {@code confidence}.
   *
   * @param lnIntensity natural logarithm of fluence or irradiance
   */
  public double lnPromisedDose(double chance, double confidence, double lnIntensity, int passes) {
    return posterior
        .doseLimit(chance)
        .lnDose(event == Event.CHAR ? 1 - confidence : confidence, lnIntensity, passes);
  }

  /** The way of working that τ and all doses are for. */
  public Way way() {
    return ways.way();
  }

  /** The coat that they are for. */
  public Coating coat() {
    return way().coat();
  }

  /** The same fit with its draws seen for another way of working. */
  public ModelFit inWay(Way other) {
    if (other.equals(way())) {
      return this;
    }
    Posterior moved = posterior.moved(ways.step(way(), other));
    WayDesign asked = ways.with(other);
    return new ModelFit(
        event,
        moved.tau(),
        phi,
        psi,
        sigma,
        omega,
        moved.evenDoseJoulesPerCm2(),
        referenceIntensity,
        paretoK,
        draws,
        effectiveDraws,
        method,
        asked,
        WayEffect.of(asked, moved),
        borrowed,
        moved);
  }

  /** The same fit with its draws seen for a piece. */
  ModelFit with(Posterior piece) {
    return new ModelFit(
        event,
        piece.tau(),
        piece.phi(),
        piece.psi(),
        piece.sigma(),
        piece.omega(),
        piece.evenDoseJoulesPerCm2(),
        referenceIntensity,
        paretoK,
        draws,
        piece.effectiveDraws(),
        method,
        ways,
        wayEffects,
        borrowed,
        piece);
  }

  public boolean reliable() {
    return paretoK <= PARETO_K_LIMIT;
  }
}
