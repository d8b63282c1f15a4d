package charline.window;

import charline.model.Event;
import charline.model.Fitter;
import charline.model.ModelFit;
import charline.model.PieceFit;
import charline.model.PieceFits;
import charline.model.Trials;
import charline.model.check.BoardCheck;
import charline.model.check.CheckedFit;
import charline.model.check.FitChecker;
import charline.model.check.FitChecks;
import charline.model.way.Way;
import charline.trial.Board;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
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
    return fitted(fitter, trials, Optional.empty());
  }

  /**
   * Fits both models for one piece.
   *
   * @param piece on which one of the trials or more was burned
   */
  public static CheckedModels of(Fitter fitter, Trials trials, Board piece) {
    return fitted(fitter, trials, Optional.of(piece));
  }

  private static CheckedModels fitted(Fitter fitter, Trials trials, Optional<Board> piece) {
    return of(trials, piece, event -> CheckedFit.of(fitter, trials, event, piece));
  }

  /**
   * Both models, each from where it comes; at once where there are two processors.
   *
   * @param piece that they are for; empty for a board not seen yet
   * @param fitted gives the model of an event
   */
  public static CheckedModels of(
      Trials trials, Optional<Board> piece, Function<Event, CheckedFit> fitted) {
    List<CheckedFit> both =
        List.of(Event.CHAR, Event.CLEARING).parallelStream().map(fitted).toList();
    CheckedFit charring = both.get(0);
    CheckedFit clearing = both.get(1);
    return new CheckedModels(
        trials,
        charring.fit(),
        clearing.fit(),
        charring.checks(),
        clearing.checks(),
        piece.map(
            board ->
                new PieceFits(
                    board, charring.piece().orElseThrow(), clearing.piece().orElseThrow())));
  }

  /** Checks models that were fitted before. */
  static CheckedModels of(Fitter fitter, Trials trials, ModelFit charring, ModelFit clearing) {
    FitChecker checker = new FitChecker(fitter);
    return of(
        trials,
        Optional.empty(),
        event -> {
          ModelFit fit = event == Event.CHAR ? charring : clearing;
          return new CheckedFit(fit, checker.check(trials, fit), Optional.empty());
        });
  }

  /** Checks models of a piece that were fitted before. */
  static CheckedModels of(Fitter fitter, Trials trials, PieceFits fits) {
    FitChecker checker = new FitChecker(fitter);
    return of(
        trials,
        Optional.of(fits.board()),
        event -> {
          PieceFit known = event == Event.CHAR ? fits.charring() : fits.clearing();
          return new CheckedFit(
              known.piece(), checker.check(trials, known.piece()), Optional.of(known));
        });
  }

  /** The same trials fitted with other priors; what was found of these models stays. */
  public CheckedModels refitted(Fitter fitter) {
    Optional<Board> board = piece.map(PieceFits::board);
    return of(
        trials,
        board,
        event ->
            CheckedFit.of(
                fitter,
                trials,
                event,
                board,
                fit -> event == Event.CHAR ? charChecks : clearingChecks));
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
