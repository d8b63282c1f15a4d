package charline.shops;

import charline.model.Event;
import charline.model.Trials;
import charline.model.classical.MixedDose;
import charline.trial.Patch;
import java.util.List;
import java.util.Optional;

/**
 * The classical view of the same window, as fair as can be: all readings, a random intercept by
 * board, and for each number of passes a box of power and hand speed that holds when the one-sided
 * limits of the doses of the asked chances on a new board keep it. No prior, nothing learned.
 */
final class ClassicalWindow {
  private static final int MOST_PASSES = 6;

  /** One-sided 90 %. */
  private static final double Z = 1.2815515655446004;

  private ClassicalWindow() {}

  /**
   * A corner of a box.
   *
   * @param percent power
   * @param dose of one pass, J/cm2
   */
  record Corner(double percent, double dose) {}

  /** A box by its corners. */
  record Box(int passes, Corner hot, Corner cold, double size) {}

  /** The largest box in log-ranges of all numbers of passes; empty if none holds. */
  static Optional<Box> largest(Trials trials) {
    Optional<MixedDose> charring = MixedDose.fit(trials, Event.CHAR);
    Optional<MixedDose> clearing = MixedDose.fit(trials, Event.CLEARING);
    if (charring.isEmpty() || clearing.isEmpty()) {
      return Optional.empty();
    }
    Box best = null;
    for (int passes = 1; passes <= MOST_PASSES; passes++) {
      Box box = largest(trials.patches(), charring.get(), clearing.get(), passes);
      best = box != null && (best == null || box.size() > best.size()) ? box : best;
    }
    return Optional.ofNullable(best);
  }

  private static Box largest(
      List<Patch> patches, MixedDose charring, MixedDose clearing, int passes) {
    double[] powers = Shop.powersPercent();
    double lowest =
        patches.stream().mapToDouble(p -> p.exposure().doseJoulesPerCm2()).min().orElseThrow();
    double highest =
        patches.stream().mapToDouble(p -> p.exposure().doseJoulesPerCm2()).max().orElseThrow();
    double[] hot = new double[powers.length];
    double[] cold = new double[powers.length];
    for (int i = 0; i < powers.length; i++) {
      double lnIntensity = Math.log(ShopBench.intensity(powers[i]));
      hot[i] =
          Math.min(
              Math.log(highest),
              charring
                  .lnDose(Judge.ASKED.charRisk(), lnIntensity, passes, Z, true)
                  .orElse(Double.NEGATIVE_INFINITY));
      cold[i] =
          Math.max(
              Math.log(lowest),
              clearing
                  .lnDose(Judge.ASKED.clearChance(), lnIntensity, passes, Z, false)
                  .orElse(Double.POSITIVE_INFINITY));
    }
    Box best = null;
    for (int h = 0; h < powers.length; h++) {
      for (int c = 0; c <= h; c++) {
        // In ln speed: from where the hot corner just holds to where the cold one just does.
        double across = Math.log(powers[h] / powers[c]);
        double along = hot[h] - cold[c] - across;
        double size = (across + 0.01) * (along + 0.01);
        if (along >= 0 && (best == null || size > best.size())) {
          best =
              new Box(
                  passes,
                  new Corner(powers[h], Math.exp(hot[h])),
                  new Corner(powers[c], Math.exp(cold[c])),
                  size);
        }
      }
    }
    return best;
  }
}
