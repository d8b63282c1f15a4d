package charline.answer;

import charline.window.Recommendation;

/**
 * How much an answer owes to the priors: the same question with all their spreads doubled.
 *
 * @param priors that the answer starts from
 * @param found the answer
 * @param halfAsSure the answer with every spread doubled
 */
public record PriorSensitivity(Priors priors, Recommendation found, Recommendation halfAsSure) {}
