package charline.window;

import charline.model.ModelFit;
import charline.model.Posterior;
import java.util.List;

/**
 * The chance of an event by some pass of one setting, on a board not seen yet.
 *
 * <p>Its bounds are the worse of what the usual prior and {@link charline.model.Prior#sturdier()}
 * say, because a promise has to survive both. The mean is the usual prior's.
 */
public final class PredictedChance {
  private final List<Posterior> views;
  private final double[] chance;

  /**
   * @param views the posterior, and any other weighting of the same draws that the bounds have to
   *     survive
   * @param seamShare share of the area that gets twice the passes, 0 to 1
   */
  PredictedChance(
      List<Posterior> views,
      double doseJoulesPerCm2,
      double intensity,
      int passes,
      double seamShare) {
    this.views = views;
    chance = views.get(0).newBoardChance(doseJoulesPerCm2, intensity, passes, seamShare);
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
        List.of(fit.posterior(), fit.sturdier()),
        doseJoulesPerCm2,
        intensity,
        passes,
        strokes.seamShare());
  }

  /** Averaged over the posterior. */
  public double mean() {
    return views.get(0).mean(chance);
  }

  /**
   * One-sided upper bound.
   *
   * @param confidence 0.5 to 1
   */
  public double upper(double confidence) {
    return views.stream().mapToDouble(v -> v.quantile(chance, confidence)).max().orElseThrow();
  }

  /**
   * One-sided lower bound.
   *
   * @param confidence 0.5 to 1
   */
  public double lower(double confidence) {
    return views.stream().mapToDouble(v -> v.quantile(chance, 1 - confidence)).min().orElseThrow();
  }
}
