package charline.answer;

import charline.model.Fitter;
import charline.model.PieceFits;
import charline.window.Recommendation;
import charline.window.WindowFinder;
import java.util.Optional;

/**
 * Finds the window of a case, in general or for one piece, and what the piece changed.
 *
 * @param fitting fits the strata of the log
 */
record Recommender(LogFitter fitting) {
  /** Fits trials as a question asks: from its priors, and borrowing where it says so. */
  Fitter fitter(TrialCase subject) {
    TrialQuestion question = subject.question();
    return fitting.fitter(subject.trials(), question.priors(), question.borrow());
  }

  /** The window of a case, for one piece where it names one. */
  Recommendation recommend(TrialCase subject) {
    return recommend(new WindowFinder(fitter(subject)), subject);
  }

  private static Recommendation recommend(WindowFinder finder, TrialCase subject) {
    return subject.piece().isEmpty()
        ? finder.recommend(subject.trials(), subject.bench(), subject.asked())
        : finder.recommend(
            subject.trials(), subject.bench(), subject.asked(), pieceFits(finder, subject));
  }

  private static PieceFits pieceFits(WindowFinder finder, TrialCase subject) {
    return PieceFits.of(finder.fitter(), subject.trials(), subject.piece().orElseThrow());
  }

  /** What the patches of the piece changed. */
  Optional<PieceAnswer> piece(TrialCase subject, Recommendation found) {
    return found.piece().map(known -> new PieceAnswer(known, general(subject, found)));
  }

  /** The answer for any board from all boards but the piece; empty where there are none. */
  Optional<Recommendation> general(TrialCase subject, Recommendation found) {
    PieceFits fits = found.piece().orElseThrow().fits();
    return subject
        .otherBoards()
        .map(
            others ->
                new WindowFinder(fitter(subject))
                    .recommend(
                        others,
                        subject.bench(),
                        subject.asked(),
                        fits.charring().general(),
                        fits.clearing().general()));
  }

  /** The same with every prior saying half as much. */
  Recommendation halfAsSure(TrialCase subject) {
    return recommend(new WindowFinder(fitter(subject)).halfAsSure(), subject);
  }

  /** How a board may differ from others, as the priors of a case and its trials have it. */
  BoardPriors boards(TrialCase subject) {
    return BoardPriors.of(fitter(subject), subject.trials(), subject.question().priors().pinned());
  }
}
