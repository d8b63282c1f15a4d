package charline.window;

import charline.model.ModelFit;
import charline.model.Posterior;

/** The chance of an event by some pass of one setting, on the board that a model is for. */
public final class PredictedChance {
  private final Posterior posterior;
  private final double[] chance;

  /**
   * @param seamShare share of the area that gets twice the passes, 0 to 1
   */
  PredictedChance(
      Posterior posterior,
      double doseJoulesPerCm2,
      double intensity,
      int passes,
      double seamShare) {
    this.posterior = posterior;
    chance = posterior.newBoardChance(doseJoulesPerCm2, intensity, passes, seamShare);
  }

  /**
   * What a fitted model says of one setting.
   *
   * @param doseJoulesPerCm2 dose per pass
   * @param intensity fluence (J/cm²) or irradiance (W/cm²)
   * @param passes 1 or more
   */
  public static PredictedChance of(
      ModelFit fit, double doseJoulesPerCm2, double intensity, int passes) {
    return of(fit, doseJoulesPerCm2, intensity, passes, Strokes.SINGLE);
  }

  /** The same over an area worked in strokes side by side. */
  static PredictedChance of(
      ModelFit fit, double doseJoulesPerCm2, double intensity, int passes, Strokes strokes) {
    return new PredictedChance(
        fit.posterior(), doseJoulesPerCm2, intensity, passes, strokes.seamShare());
  }

  /** Averaged over the posterior. */
  public double mean() {
    return posterior.mean(chance);
  }

  /**
   * One-sided upper bound.
   *
   * @param confidence 0.5 to 1
   */
  public double upper(double confidence) {
    return posterior.quantile(chance, confidence);
  }

  /**
   * One-sided lower bound.
   *
   * @param confidence 0.5 to 1
   */
  public double lower(double confidence) {
    return posterior.quantile(chance, 1 - confidence);
  }
}
