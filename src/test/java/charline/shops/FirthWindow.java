package charline.shops;

import charline.stat.interval.Bound;
import charline.stat.inverse.Dose;
import charline.stat.inverse.DoseAtRisk;
import charline.stat.linear.Design;
import charline.stat.regression.BinomialFit;
import charline.stat.regression.BinomialRegression;
import charline.stat.regression.BinomialSample;
import charline.stat.regression.Estimator;
import charline.trial.Patch;
import charline.trial.Reading;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * The classical view of the same window: one reading a patch, Firth's penalised logistic regression
 * on ln dose, ln fluence and ln passes, and a box of power and hand speed that holds when the
 * one-sided profile bounds of the doses at the asked risks keep it. Boards are not in it.
 */
final class FirthWindow {
  private static final String DOSE = "ln dose";
  private static final String INTENSITY = "ln fluence";
  private static final String PASSES = "ln passes";
  private static final int MOST_PASSES = 3;

  /** The passes of its boxes: those at which the true gap is the scenario's. */
  private static final int PASSES_OF_BOX = 2;

  /** A two-sided interval at this level has one-sided bounds at the asked confidence. */
  private static final double TWO_SIDED = 2 * Judge.ASKED.confidence() - 1;

  private FirthWindow() {}

  /**
   * A corner of a box.
   *
   * @param percent power
   * @param dose of one pass, J/cm2
   */
  record Corner(double percent, double dose) {}

  /** A box by its corners. */
  record Box(int passes, Corner hot, Corner cold, double size) {}

  /** The largest box in log-ranges; empty if none holds. */
  static Optional<Box> largest(List<Patch> patches) {
    Optional<BinomialFit> charring = fit(patches, r -> r.outcome().charred());
    Optional<BinomialFit> clearing = fit(patches, r -> r.outcome().cleared(false));
    if (charring.isEmpty() || clearing.isEmpty()) {
      return Optional.empty();
    }
    return Optional.ofNullable(largest(patches, charring.get(), clearing.get()));
  }

  /** One row a patch: its state after one, two, three passes in turn, or at its last reading. */
  private static Optional<BinomialFit> fit(List<Patch> patches, Predicate<Reading> shown) {
    List<double[]> rows = new ArrayList<>();
    List<Integer> outcomes = new ArrayList<>();
    for (int i = 0; i < patches.size(); i++) {
      Patch patch = patches.get(i);
      int wanted = 1 + i % MOST_PASSES;
      Reading at = patch.readings().get(0);
      for (Reading reading : patch.readings()) {
        at = reading.passes() <= wanted ? reading : at;
      }
      rows.add(
          new double[] {
            1,
            Math.log(patch.exposure().doseJoulesPerCm2()),
            Math.log(patch.exposure().intensity()),
            Math.log(at.passes())
          });
      outcomes.add(shown.test(at) ? 1 : 0);
    }
    Design design =
        Design.of(
            List.of(Design.INTERCEPT, DOSE, INTENSITY, PASSES), rows.toArray(double[][]::new));
    BinomialSample sample =
        BinomialSample.of(design, outcomes.stream().mapToInt(Integer::intValue).toArray());
    return BinomialRegression.withDefaults().with(Estimator.FIRTH_PENALISED).fit(sample)
            instanceof BinomialFit fit
        ? Optional.of(fit)
        : Optional.empty();
  }

  private static Box largest(List<Patch> patches, BinomialFit charring, BinomialFit clearing) {
    double[] powers = Shop.powersPercent();
    if (!bounded(charring, Judge.ASKED.charRisk(), powers[0], true)
        || !bounded(clearing, Judge.ASKED.clearChance(), powers[0], false)) {
      return null;
    }
    double[] doses =
        patches.stream().mapToDouble(p -> Math.log(p.exposure().doseJoulesPerCm2())).toArray();
    double lowest = min(doses);
    double highest = -min(Arrays.stream(doses).map(d -> -d).toArray());
    double[] hot = new double[powers.length];
    double[] cold = new double[powers.length];
    for (int i = 0; i < powers.length; i++) {
      hot[i] = Math.min(highest, bound(charring, Judge.ASKED.charRisk(), powers[i], true));
      cold[i] = Math.max(lowest, bound(clearing, Judge.ASKED.clearChance(), powers[i], false));
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
                  PASSES_OF_BOX,
                  new Corner(powers[h], Math.exp(hot[h])),
                  new Corner(powers[c], Math.exp(cold[c])),
                  size);
        }
      }
    }
    return best;
  }

  /** Whether a bound exists depends on the slope alone, so one power tells for all. */
  private static boolean bounded(BinomialFit fit, double chance, double percent, boolean lower) {
    return Double.isFinite(bound(fit, chance, percent, lower));
  }

  private static double min(double[] values) {
    return Arrays.stream(values).min().orElseThrow();
  }

  /**
   * The ln dose bound on the cautious side; infinite, so that nothing holds, where there is none.
   */
  private static double bound(BinomialFit fit, double chance, double percent, boolean lower) {
    double none = lower ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
    DoseAtRisk question =
        new DoseAtRisk(
            DOSE,
            chance,
            Map.of(
                INTENSITY, Math.log(ShopBench.intensity(percent)), PASSES, Math.log(PASSES_OF_BOX)),
            TWO_SIDED);
    if (question.estimate(fit) instanceof Dose dose && dose.slope() > 0) {
      Bound end = lower ? dose.profile().lower() : dose.profile().upper();
      return end instanceof Bound.At at ? at.value() : none;
    }
    return none;
  }
}
