package charline.window;

import charline.model.Event;
import charline.model.Fitter;
import charline.model.ModelFit;
import charline.model.PieceFits;
import charline.model.Trials;
import charline.model.check.BoardCheck;
import charline.model.check.FitChecker;
import charline.model.check.FitChecks;
import charline.model.way.Way;
import charline.trial.Board;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Both models of the same trials with what checking them against those trials found.
 *
 * @param trials patches that they were fitted to, tint counted one way
 * @param charring the burn-onset model
 * @param clearing the removal model
 * @param charChecks what was found of the first
 * @param clearingChecks what was found of the second
 * @param piece what is known of the piece that they are for; empty where they are for any board
 */
public record CheckedModels(
    Trials trials,
    ModelFit charring,
    ModelFit clearing,
    FitChecks charChecks,
    FitChecks clearingChecks,
    Optional<PieceFits> piece) {

  /** Fits both models for a board not seen yet. */
  public static CheckedModels of(Fitter fitter, Trials trials) {
    return of(fitter, trials, fitter.fit(trials, Event.CHAR), fitter.fit(trials, Event.CLEARING));
  }

  /** Checks models that were fitted before. */
  static CheckedModels of(Fitter fitter, Trials trials, ModelFit charring, ModelFit clearing) {
    return of(fitter, trials, charring, clearing, Optional.empty());
  }

  /**
   * Fits both models for one piece.
   *
   * @param piece on which one of the trials or more was burned
   */
  public static CheckedModels of(Fitter fitter, Trials trials, Board piece) {
    return of(fitter, trials, PieceFits.of(fitter, trials, piece));
  }

  /** Checks models of a piece that were fitted before. */
  static CheckedModels of(Fitter fitter, Trials trials, PieceFits fits) {
    return of(fitter, trials, fits.charring().piece(), fits.clearing().piece(), Optional.of(fits));
  }

  private static CheckedModels of(
      Fitter fitter,
      Trials trials,
      ModelFit charring,
      ModelFit clearing,
      Optional<PieceFits> piece) {
    FitChecker checker = new FitChecker(fitter);
    return new CheckedModels(
        trials,
        charring,
        clearing,
        checker.check(trials, charring),
        checker.check(trials, clearing),
        piece);
  }

  /** The same models seen for another way of working; what was found of them stays. */
  CheckedModels asking(Way asked) {
    Trials others = trials.asking(asked);
    Way way = others.way();
    return new CheckedModels(
        others,
        charring.inWay(way),
        clearing.inWay(way),
        charChecks,
        clearingChecks,
        piece.map(fits -> fits.inWay(way)));
  }

  /** False where a window of these trials is unreliable. */
  public boolean reliable() {
    return !charChecks.fail() && !clearingChecks.fail();
  }

  /** In what the piece lies further off the other boards than any of them should. */
  Map<Event, BoardCheck> unlike() {
    Map<Event, BoardCheck> unlike = new EnumMap<>(Event.class);
    piece.ifPresent(
        fits ->
            Stream.of(charChecks, clearingChecks)
                .forEach(
                    checks ->
                        checks.shifts().stream()
                            .filter(shift -> shift.board().equals(fits.board().name()))
                            .filter(BoardCheck::off)
                            .forEach(shift -> unlike.put(checks.event(), shift))));
    return unlike;
  }
}
