package charline.answer;

import charline.model.Fitter;
import charline.window.CheckedModels;
import charline.window.Recommendation;
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

  /** What is fitted for a case. */
  KeptFits.Job job(TrialCase subject) {
    return new KeptFits.Job(
        fitter(subject),
        subject.trials().acceptingTint(subject.asked().acceptTint()),
        subject.piece().filter(piece -> subject.patchesOnPiece() > 0));
  }

  /** The window of a case, for one piece where it names one that has patches. */
  FoundWindow window(TrialCase subject) {
    return fitting.kept().window(job(subject), subject.bench(), subject.asked());
  }

  /** Both models of a case, checked. */
  CheckedModels models(TrialCase subject) {
    return fitting.kept().models(job(subject));
  }

  /** The window of a case whose models are at hand. */
  FoundWindow window(TrialCase subject, CheckedModels models) {
    return fitting.kept().window(job(subject), models, subject.bench(), subject.asked());
  }

  /** What the patches of the piece changed. */
  Optional<PieceAnswer> piece(TrialCase subject, FoundWindow window) {
    return window.found().piece().map(known -> new PieceAnswer(known, general(subject, window)));
  }

  /** The answer for any board from all boards but the piece; empty where there are none. */
  Optional<Recommendation> general(TrialCase subject, FoundWindow window) {
    return subject
        .otherBoards()
        .map(others -> fitting.kept().general(window, fitter(subject), others));
  }

  /** What is left of it with every prior saying half as much. */
  PriorSensitivity.HalfAsSure halfAsSure(TrialCase subject, CheckedModels models) {
    return fitting.kept().halfAsSure(job(subject), models, subject.bench(), subject.asked());
  }

  /** Whether a window applies to the rig as it is now. */
  Applicability applicability(TrialCase subject) {
    return Applicability.of(
        subject, fitting.kept().validity(subject.bench().rig(), subject.trials()));
  }

  /** How a board may differ from others, as the priors of a case and its trials have it. */
  BoardPriors boards(TrialCase subject) {
    return BoardPriors.of(fitter(subject), subject.trials(), subject.question().priors().pinned());
  }
}
