package charline.model.check;

import charline.model.Event;
import charline.model.Fitter;
import charline.model.ModelFit;
import charline.model.PieceFit;
import charline.model.Trials;
import charline.trial.Board;
import java.util.Optional;
import java.util.function.Function;

/**
 * One event's model with what checking it against its own trials found.
 *
 * @param fit the model, of the piece where it is for one
 * @param checks what was found
 * @param piece what is known of the piece; empty where the model is for any board
 */
public record CheckedFit(ModelFit fit, FitChecks checks, Optional<PieceFit> piece) {
  /**
   * Fits one event and checks it.
   *
   * @param piece on which one of the trials or more was burned; empty for a board not seen yet
   */
  public static CheckedFit of(Fitter fitter, Trials trials, Event event, Optional<Board> piece) {
    return of(fitter, trials, event, piece, fit -> new FitChecker(fitter).check(trials, fit));
  }

  /**
   * Fits one event.
   *
   * @param checks what is found of the fit
   */
  public static CheckedFit of(
      Fitter fitter,
      Trials trials,
      Event event,
      Optional<Board> piece,
      Function<ModelFit, FitChecks> checks) {
    Optional<PieceFit> known = piece.map(board -> PieceFit.of(fitter, trials, event, board.id()));
    ModelFit fit = known.map(PieceFit::piece).orElseGet(() -> fitter.fit(trials, event));
    return new CheckedFit(fit, checks.apply(fit), known);
  }
}
