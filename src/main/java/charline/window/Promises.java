package charline.window;

import charline.exposure.Exposure;
import charline.model.DoseLimit;
import charline.model.ModelFit;
import java.util.List;
import java.util.Random;

/**
 * Both posteriors with what was asked of them.
 *
 * <p>A promise has to hold under the usual prior and under {@link charline.model.Prior#sturdier()}.
 * The usual prior alone broke its promises too often in simulated shops whose boards differ more
 * than it expects (reports/validation.md): three boards say little of how much boards differ.
 */
final class Promises {
  private static final int PAIRS = 2000;

  private final Asked asked;
  private final ModelFit charFit;
  private final ModelFit clearing;
  private final List<DoseLimit> charLimits;
  private final List<DoseLimit> clearingLimits;

  Promises(Asked asked, ModelFit charFit, ModelFit clearing) {
    this.asked = asked;
    this.charFit = charFit;
    this.clearing = clearing;
    charLimits = limits(charFit, asked.charRisk());
    clearingLimits = limits(clearing, asked.clearChance());
  }

  private static List<DoseLimit> limits(ModelFit fit, double chance) {
    DoseLimit usual = fit.posterior().doseLimit(chance);
    return List.of(usual, usual.under(fit.sturdier()));
  }

  Asked asked() {
    return asked;
  }

  /** Highest dose at which the char promise holds with the asked confidence. */
  Frontier hottest(Reach reach, int passes) {
    return new Frontier(
        charLimits,
        1 - asked.confidence(),
        reach.lnLowestIntensity(),
        reach.lnHighestIntensity(),
        passes);
  }

  /** Lowest dose at which the clearing promise holds with the asked confidence. */
  Frontier coldest(Reach reach, int passes) {
    return new Frontier(
        clearingLimits,
        asked.confidence(),
        reach.lnLowestIntensity(),
        reach.lnHighestIntensity(),
        passes);
  }

  /** What the models expect of one setting. */
  Forecast forecast(Bench bench, double powerPercent, double speed, int passes) {
    Exposure exposure = bench.exposure(powerPercent, speed);
    double[] risk =
        charFit
            .posterior()
            .newBoardChance(exposure.doseJoulesPerCm2(), exposure.intensity(), passes);
    double[] chance =
        clearing
            .posterior()
            .newBoardChance(exposure.doseJoulesPerCm2(), exposure.intensity(), passes);
    return new Forecast(
        powerPercent,
        exposure.deliveredWatts(),
        speed,
        passes,
        exposure.doseJoulesPerCm2(),
        exposure.intensity(),
        charFit.posterior().mean(risk),
        Math.max(
            charFit.posterior().quantile(risk, asked.confidence()),
            charFit.sturdier().quantile(risk, asked.confidence())),
        clearing.posterior().mean(chance),
        Math.min(
            clearing.posterior().quantile(chance, 1 - asked.confidence()),
            clearing.sturdier().quantile(chance, 1 - asked.confidence())),
        exposure.areaRate().netOf(passes).squareCentimetresPerMinute());
  }

  /**
   * Posterior chance that some setting keeps both promises, whatever its dose, at intensities and
   * passes that were tried. Per draw the room between the two doses is linear in ln intensity and
   * ln passes, so it is widest at a corner. The two posteriors are independent: draws are paired at
   * random, by a fixed seed.
   */
  double chanceAnyWindow(Reach reach) {
    boolean[] any = new boolean[PAIRS];
    int[] partner = shuffled();
    for (double intensity : new double[] {reach.lnLowestIntensity(), reach.lnHighestIntensity()}) {
      for (int passes : new int[] {1, reach.mostPasses()}) {
        double[] hottest = charLimits.get(0).sample(PAIRS, intensity, passes);
        double[] coldest = clearingLimits.get(0).sample(PAIRS, intensity, passes);
        for (int i = 0; i < PAIRS; i++) {
          any[i] |= coldest[partner[i]] <= hottest[i];
        }
      }
    }
    int count = 0;
    for (boolean a : any) {
      count += a ? 1 : 0;
    }
    return (double) count / PAIRS;
  }

  private static int[] shuffled() {
    int[] order = new int[PAIRS];
    Random random = new Random(PAIRS);
    for (int i = 0; i < PAIRS; i++) {
      int j = random.nextInt(i + 1);
      order[i] = order[j];
      order[j] = i;
    }
    return order;
  }
}
