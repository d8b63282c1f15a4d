package charline.answer;

import charline.model.ModelFit;
import charline.model.check.FitChecks;

/**
 * One fitted model.
 *
 * @param subject the question and the trials that answer it
 * @param fit the model
 * @param checks how well it fits
 */
public record ModelAnswer(TrialCase subject, ModelFit fit, FitChecks checks) {}
