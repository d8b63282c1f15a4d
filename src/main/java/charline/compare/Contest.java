package charline.compare;

import charline.model.Estimate;
import charline.model.ModelFit;
import charline.trial.Patch;
import charline.window.PredictedChance;
import charline.window.Requirements;
import java.util.Arrays;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import java.util.function.IntToDoubleFunction;
import java.util.stream.Collectors;

/**
 * Two ways of working held against each other; all ratios are of the first over the second.
 *
 * @param first room of the first
 * @param second room of the second
 * @param charDoseRatio dose of the first over that of the second at which the char risk reaches its
 *     limit
 * @param clearDoseRatio the same for the clearing chance
 * @param firstBetter posterior chance that the first has more room
 * @param boardsShared boards that carry patches of both
 * @param settled whether the trials say which is better, or that neither is
 * @param pairsToSettle how many more pairs of patches are likely to settle it; empty where more
 *     than {@link #MOST_PAIRS} would be, and 0 where it is settled
 * @param reliable whether all models could be computed
 */
public record Contest(
    Room first,
    Room second,
    Estimate charDoseRatio,
    Estimate clearDoseRatio,
    double firstBetter,
    int boardsShared,
    boolean settled,
    OptionalInt pairsToSettle,
    boolean reliable) {
  /** Nobody burns more pairs than this to learn which way is better. */
  public static final int MOST_PAIRS = 60;

  /** A chance of being better from which it is settled. */
  public static final double SURE = 0.95;

  /** Rooms within this factor of each other are alike at the bench (common practice). */
  private static final double ALIKE = Math.log(1.15);

  /** Standard deviations that a normal's 5 % quantile lies below its middle. */
  private static final double ONE_SIDED = 1.6449;

  private static final int DRAWS = 8000;

  /**
   * Compares two ways.
   *
   * @param asked what risk and chance the doses are for
   */
  public static Contest of(Side one, Side other, Requirements asked) {
    boolean together = one.trials().stratum().equals(other.trials().stratum());
    double[] charOne = limits(one, one.charring(), asked.charRisk());
    double[] charOther = limits(other, other.charring(), asked.charRisk());
    double[] clearOne = limits(one, one.clearing(), asked.clearChance());
    double[] clearOther = limits(other, other.clearing(), asked.clearChance());
    // Fits use one sequence of points; shuffled, draws of two fits are independent.
    shuffle(clearOne, 1);
    shuffle(clearOther, 1);
    if (!together) {
      shuffle(charOther, 2);
      shuffle(clearOther, 3);
    }
    double[] roomOne = draws(i -> charOne[i] - clearOne[i]);
    double[] roomOther = draws(i -> charOther[i] - clearOther[i]);
    double[] gain = draws(i -> roomOne[i] - roomOther[i]);
    // Neither 0 nor 1, which no number of draws shows.
    double better = (Arrays.stream(gain).filter(g -> g > 0).count() + 0.5) / (DRAWS + 1.0);
    boolean settled = Math.max(better, 1 - better) >= SURE || alike(gain);
    return new Contest(
        room(one, asked, roomOne, charOne, clearOne),
        room(other, asked, roomOther, charOther, clearOther),
        exp(estimate(draws(i -> charOne[i] - charOther[i]))),
        exp(estimate(draws(i -> clearOne[i] - clearOther[i]))),
        better,
        shared(one, other),
        settled,
        settled ? OptionalInt.of(0) : pairs(one, other, gain),
        one.reliable() && other.reliable());
  }

  /** True where the models know no difference in char, so that 1 is no finding of the trials. */
  public boolean charTakenAsAlike() {
    return charDoseRatio.low() == charDoseRatio.high();
  }

  private static double[] limits(Side side, ModelFit fit, double chance) {
    return fit.posterior().doseLimit(chance).sample(DRAWS, side.lnIntensity(), side.passes());
  }

  private static Room room(
      Side side, Requirements asked, double[] room, double[] charring, double[] clearing) {
    double lnDose =
        side.clearing()
            .lnPromisedDose(
                asked.clearChance(), asked.confidence(), side.lnIntensity(), side.passes());
    PredictedChance risk =
        PredictedChance.of(
            side.charring(), Math.exp(lnDose), Math.exp(side.lnIntensity()), side.passes());
    return new Room(
        estimate(room),
        exp(estimate(charring)),
        exp(estimate(clearing)),
        risk.mean(),
        risk.upper(asked.confidence()));
  }

  /** Whether nine in ten draws say that the two do not differ by as much as a hand would notice. */
  private static boolean alike(double[] gain) {
    Estimate range = estimate(gain);
    return range.low() > -ALIKE && range.high() < ALIKE;
  }

  /**
   * Each pair tells as much as each of those so far did, so that the variance of the gain falls as
   * the patches of the rarer way grow: settled where the gain, if it stays, is as many standard
   * deviations from 0 as the sureness asks, or so small that the two are alike.
   */
  private static OptionalInt pairs(Side one, Side other, double[] gain) {
    double middle = Math.abs(estimate(gain).median());
    double variance = variance(gain);
    double now = patches(one.ownPatches(), other.ownPatches());
    for (int more = 1; more <= MOST_PAIRS; more++) {
      double sd =
          Math.sqrt(variance * now / patches(one.ownPatches() + more, other.ownPatches() + more));
      if (middle >= ONE_SIDED * sd || middle + ONE_SIDED * sd < ALIKE) {
        return OptionalInt.of(more);
      }
    }
    return OptionalInt.empty();
  }

  /** So many patches of each of two ways tell as much of their difference as these do. */
  private static double patches(int one, int other) {
    return 2 / (1.0 / Math.max(1, one) + 1.0 / Math.max(1, other));
  }

  private static int shared(Side one, Side other) {
    Set<UUID> boards = boards(one);
    boards.retainAll(boards(other));
    return boards.size();
  }

  private static Set<UUID> boards(Side side) {
    return side.trials().patches().stream()
        .filter(side::made)
        .map(Patch::board)
        .map(board -> board.id())
        .collect(Collectors.toSet());
  }

  private static double[] draws(IntToDoubleFunction of) {
    double[] values = new double[DRAWS];
    Arrays.setAll(values, of);
    return values;
  }

  private static void shuffle(double[] values, long seed) {
    Random random = new Random(seed);
    for (int i = values.length - 1; i > 0; i--) {
      int j = random.nextInt(i + 1);
      double kept = values[i];
      values[i] = values[j];
      values[j] = kept;
    }
  }

  private static double variance(double[] values) {
    double mean = Arrays.stream(values).average().orElseThrow();
    return Arrays.stream(values).map(v -> (v - mean) * (v - mean)).average().orElseThrow();
  }

  private static Estimate estimate(double[] values) {
    double[] rising = values.clone();
    Arrays.sort(rising);
    return new Estimate(at(rising, 0.5), at(rising, 0.05), at(rising, 0.95));
  }

  private static double at(double[] rising, double share) {
    return rising[(int) Math.round(share * (rising.length - 1))];
  }

  private static Estimate exp(Estimate ln) {
    return new Estimate(Math.exp(ln.median()), Math.exp(ln.low()), Math.exp(ln.high()));
  }
}
