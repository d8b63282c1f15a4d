package charline.model;

import charline.model.way.Way;
import charline.trial.Patch;
import java.util.List;
import java.util.UUID;
import java.util.function.Predicate;

/**
 * One event's model for a piece: what the other boards' patches say of any board, and what the
 * piece's own patches make of that.
 *
 * <p>The two sets of patches are independent given the parameters and the piece's shift, so fitting
 * the other boards and then weighing their draws by the piece's patches gives the posterior of all
 * of them. Where too few draws carry that weighting, by its k-hat, the model is fitted to all
 * patches and only the piece's shift is conditioned on its own; the two agree but for the sampling.
 *
 * @param general fitted to the other boards; the prior where there are none
 * @param piece the same for the piece
 * @param patches how many of its own the piece has, 1 or more
 * @param shift by how much the piece takes more than the average board before the event, in ln dose
 * @param kHat Pareto k-hat of the weighting by the piece's patches
 * @param refitted whether the weighting failed, so that the model was fitted to all patches
 */
public record PieceFit(
    ModelFit general, ModelFit piece, int patches, Estimate shift, double kHat, boolean refitted) {

  /**
   * Below it the variance of the weights is finite, and bounds far out in a tail are as steady as
   * those of a fit (Vehtari et al. 2024); up to 0.7 means still are. At 0.55 a bound on char came
   * out 3 % too low.
   */
  public static final double LARGEST_K_HAT = 0.5;

  /** The same seen for another way of working. */
  PieceFit inWay(Way other) {
    return new PieceFit(general.inWay(other), piece.inWay(other), patches, shift, kHat, refitted);
  }

  /**
   * Fits one event for a piece.
   *
   * @param trials patches of a stratum, some of them on the piece
   * @param board the piece
   * @throws IllegalArgumentException if no patch is on the piece
   */
  public static PieceFit of(Fitter fitter, Trials trials, Event event, UUID board) {
    Predicate<Patch> onPiece = patch -> patch.board().id().equals(board);
    List<double[]> waySteps = trials.waySteps(event, onPiece);
    if (waySteps.isEmpty()) {
      throw new IllegalArgumentException("A piece must have a patch of its own.");
    }
    List<CensoredPasses> seen = trials.censored(event, onPiece);
    ModelFit general = fitter.fit(trials, event, onPiece.negate());
    Posterior.OnPiece weighed = general.posterior().onPiece(seen, waySteps);
    if (weighed.kHat() <= LARGEST_K_HAT) {
      return new PieceFit(
          general,
          general.with(weighed.posterior()),
          waySteps.size(),
          weighed.shift(),
          weighed.kHat(),
          false);
    }
    ModelFit all = fitter.fit(trials, event);
    Posterior.OnPiece known = all.posterior().givenShiftOf(seen, waySteps);
    return new PieceFit(
        general, all.with(known.posterior()), waySteps.size(), known.shift(), weighed.kHat(), true);
  }
}
