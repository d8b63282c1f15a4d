package charline.plan;

import charline.model.ModelFit;

/**
 * The chance of an event on a new board.
 *
 * @param mean averaged over the posterior
 * @param lower one-sided lower bound
 * @param upper one-sided upper bound
 */
record Predicted(double mean, double lower, double upper) {
  static Predicted chance(ModelFit fit, Setting s, int passes, double confidence) {
    double[] chance = fit.posterior().newBoardChance(s.doseJoulesPerCm2(), s.intensity(), passes);
    return new Predicted(
        fit.posterior().mean(chance),
        fit.posterior().quantile(chance, 1 - confidence),
        fit.posterior().quantile(chance, confidence));
  }
}
