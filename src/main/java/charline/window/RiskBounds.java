package charline.window;

import charline.exposure.Exposure;
import charline.model.DoseLimit;
import charline.model.ModelFit;
import charline.model.Posterior;
import java.util.Random;

/** Both posteriors with what was asked of them. */
final class RiskBounds {
  /** Give a chance to within 0.003, so that no verdict hangs on the lot. */
  private static final int PAIRS = 20_000;

  private final Requirements asked;
  private final Posterior charring;
  private final Posterior clearing;
  private final DoseLimit charLimit;
  private final DoseLimit clearingLimit;
  private final double seamShare;

  /**
   * @param strokes how the work is covered; seams count for char, and are cleared like the rest
   */
  RiskBounds(Requirements asked, ModelFit charFit, ModelFit clearingFit, Strokes strokes) {
    this.asked = asked;
    seamShare = strokes.seamShare();
    charring = charFit.posterior();
    clearing = clearingFit.posterior();
    charLimit = charring.doseLimit(asked.charRisk(), seamShare);
    clearingLimit = clearing.doseLimit(asked.clearChance());
  }

  Requirements asked() {
    return asked;
  }

  /** Highest dose at which the char promise holds with the asked confidence. */
  Frontier hottest(TriedRegion reach, int passes) {
    return Frontier.of(
        charLimit,
        1 - asked.confidence(),
        reach.lnLowestIntensity(),
        reach.lnHighestIntensity(),
        passes);
  }

  /** Lowest dose at which the clearing promise holds with the asked confidence. */
  Frontier coldest(TriedRegion reach, int passes) {
    return coldest(reach, passes, asked.confidence());
  }

  /** Lowest dose at which it holds with half of the doubt that was asked for. */
  Frontier coldestOfHalfTheDoubt(TriedRegion reach, int passes) {
    return coldest(reach, passes, halfTheDoubt());
  }

  /** The confidence that leaves half of the doubt that was asked for. */
  double halfTheDoubt() {
    return (1 + asked.confidence()) / 2;
  }

  private Frontier coldest(TriedRegion reach, int passes, double confidence) {
    return Frontier.of(
        clearingLimit, confidence, reach.lnLowestIntensity(), reach.lnHighestIntensity(), passes);
  }

  /** True if a setting keeps the clearing promise with some confidence. */
  boolean clears(RigSetup bench, double powerPercent, double speed, int passes, double confidence) {
    Exposure exposure = bench.exposure(powerPercent, speed);
    return new PredictedChance(
                clearing, exposure.doseJoulesPerCm2(), exposure.intensity(), passes, 0)
            .lower(confidence)
        >= asked.clearChance();
  }

  /** What the models expect of one setting. */
  Forecast forecast(RigSetup bench, double powerPercent, double speed, int passes) {
    Exposure exposure = bench.exposure(powerPercent, speed);
    double dose = exposure.doseJoulesPerCm2();
    PredictedChance risk =
        new PredictedChance(charring, dose, exposure.intensity(), passes, seamShare);
    PredictedChance chance = new PredictedChance(clearing, dose, exposure.intensity(), passes, 0);
    return new Forecast(
        powerPercent,
        exposure.deliveredWatts(),
        speed,
        passes,
        dose,
        exposure.intensity(),
        risk.mean(),
        risk.upper(asked.confidence()),
        chance.mean(),
        chance.lower(asked.confidence()),
        bench.areaRate(exposure).netOf(passes).squareCentimetresPerMinute());
  }

  /**
   * Posterior chance that some setting keeps both promises, whatever its dose, at intensities and
   * passes that were tried. Per draw the room between the two doses is linear in ln intensity and
   * ln passes, so it is widest at a corner. The two posteriors are independent: draws are paired at
   * random, by a fixed seed.
   */
  double chanceAnyWindow(TriedRegion reach) {
    boolean[] any = new boolean[PAIRS];
    int[] partner = shuffled();
    for (double intensity : new double[] {reach.lnLowestIntensity(), reach.lnHighestIntensity()}) {
      for (int passes : new int[] {reach.fewestPasses(), reach.mostPasses()}) {
        double[] hottest = charLimit.sample(PAIRS, intensity, passes);
        double[] coldest = clearingLimit.sample(PAIRS, intensity, passes);
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
