package charline.answer;

import charline.model.ModelFit;
import charline.model.PieceFit;
import charline.model.check.FitChecks;
import java.util.Optional;

/**
 * One fitted model.
 *
 * @param subject the question and the trials that answer it
 * @param fit the model, of the piece where the question names one
 * @param checks how well it fits
 * @param boards what was likely of the spread between boards before these trials
 * @param piece what the patches of the piece changed, where the question names one
 */
public record ModelAnswer(
    TrialCase subject,
    ModelFit fit,
    FitChecks checks,
    BoardPriors boards,
    Optional<PieceFit> piece) {}
