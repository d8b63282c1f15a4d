package charline.wording;

import charline.answer.TrialQuestion;
import charline.trial.Caution;
import java.util.Optional;

/** What an answer rests on beside the trials, where that is not the usual. */
public final class BasisText {
  private BasisText() {}

  /** Which priors count, where they come from a file. */
  public static Optional<String> of(TrialQuestion question) {
    return question
        .priors()
        .file()
        .map(
            file -> "Priors: from %s, in place of the usual priors.".formatted(file.getFileName()));
  }

  /** The file that the priors come from; null for the usual ones. */
  public static Optional<Json> json(TrialQuestion question) {
    return question.priors().file().map(file -> new Json().put("file", file.toString()));
  }

  /** The same for a sheet, which outlives the question. */
  public static Optional<Caution> caution(TrialQuestion question) {
    return of(question).map(words -> new Caution("Your own priors", words, "the question asked"));
  }
}
