package charline.answer;

import charline.model.classical.ClassicalOutcome;
import charline.model.classical.ClassicalRegression;
import charline.model.classical.Comparison;
import java.util.Optional;

/**
 * The classical view of trials.
 *
 * @param subject the question and the trials that answer it
 * @param outcome the fit, or why there is none
 * @param asked how it was fitted, and for what risk
 * @param comparison the same doses by the posterior, where there is a fit
 */
public record ClassicalAnswer(
    TrialCase subject,
    ClassicalOutcome outcome,
    ClassicalRegression asked,
    Optional<Comparison> comparison) {}
