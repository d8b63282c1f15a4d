package charline.shops;

import charline.shops.Scenario.Weights;
import charline.trial.Patch;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/**
 * One simulated shop.
 *
 * @param charring what is true of char
 * @param clearing what is true of clearing
 * @param patches what it burned and saw
 */
record Shop(Law charring, Law clearing, List<Patch> patches) {
  private static final double[] POWERS_PERCENT = {30, 40, 50, 60, 70, 85, 100};
  private static final double[] HANDS_MM_S = {12, 18, 27, 40};
  private static final int MOST_PASSES = 6;
  private static final double LIMIT = 0.05;
  private static final double TARGET = 0.90;

  /** Shop number {@code number} of a scenario; the same number gives the same shop. */
  static Shop draw(Scenario scenario, int number) {
    Random random = new Random(31L * scenario.code().hashCode() + 1_000_003L * number);
    double lnReference = Math.log(ShopBench.intensity(60));
    // The middle of the window wanders a fifth either way about the middle of the ladder.
    double middle = Math.log(ShopBench.dose(60, 22)) + 0.4 * random.nextDouble() - 0.2;
    Law charring = law(scenario, true, middle + scenario.gap() / 2, LIMIT, lnReference, random);
    Law clearing = law(scenario, false, middle - scenario.gap() / 2, TARGET, lnReference, random);
    return new Shop(charring, clearing, patches(scenario, charring, clearing, random));
  }

  private static Law law(
      Scenario s, boolean charring, double lnDose, double chance, double lnReference, Random r) {
    double omega = s.omega();
    double sigma = 0.2 * Math.exp(0.3 * r.nextGaussian());
    double phi = charring ? between(0.2, 0.7, r) : between(0.4, 1.0, r);
    double psi = charring ? between(0.3, 0.8, r) : between(0.5, 1.0, r);
    if (s.weights() == Weights.WEAK) {
      phi = between(0, 0.1, r);
      psi = between(0.1, 0.25, r);
    } else if (s.weights() == Weights.STRONG) {
      phi = between(1.2, 1.6, r);
      psi = between(1.2, 1.5, r);
    } else if (s.weights() == Weights.FROM_PRIOR) {
      omega = Math.abs(0.2 * r.nextGaussian());
      sigma = 0.25 * Math.exp(0.6 * r.nextGaussian());
      phi = aboveZero(charring ? 0.4 : 0.7, 0.4, r);
      psi = aboveZero(charring ? 0.6 : 0.8, 0.35, r);
    }
    return Law.pinned(
        lnDose, chance, phi, psi, sigma * s.widening(), omega, s.noise(), lnReference);
  }

  private static double between(double low, double high, Random random) {
    return low + (high - low) * random.nextDouble();
  }

  private static double aboveZero(double mean, double sd, Random random) {
    double value;
    do {
      value = mean + sd * random.nextGaussian();
    } while (value <= 0);
    return value;
  }

  private static List<Patch> patches(Scenario s, Law charring, Law clearing, Random random) {
    double[][] shifts = new double[s.boards()][2];
    for (double[] shift : shifts) {
      shift[0] = random.nextGaussian();
      shift[1] = random.nextGaussian();
    }
    List<int[]> order = settings(s.patches(), random);
    List<Patch> patches = new ArrayList<>();
    for (int i = 0; i < s.patches(); i++) {
      double power = POWERS_PERCENT[order.get(i)[0]];
      double hand = HANDS_MM_S[order.get(i)[1]];
      int board = i % s.boards();
      double lnDose = Math.log(ShopBench.dose(power, hand));
      double lnIntensity = Math.log(ShopBench.intensity(power));
      double charsAt =
          charring.firstPass(lnDose, lnIntensity, shifts[board][0], noise(charring, random));
      double clearsAt =
          clearing.firstPass(lnDose, lnIntensity, shifts[board][1], noise(clearing, random));
      int[] reads = s.everyPass() ? upTo(MOST_PASSES) : new int[] {1 + random.nextInt(3)};
      patches.add(
          ShopBench.patch(
              i, board, power, hand, seen(reads, charsAt, clearsAt, s.misgraded(), random)));
    }
    return patches;
  }

  static double[] powersPercent() {
    return POWERS_PERCENT.clone();
  }

  /** Power in percent and hand speed in mm/s of any setting on the grid. */
  static double[] anySetting(Random random) {
    return new double[] {
      POWERS_PERCENT[random.nextInt(POWERS_PERCENT.length)],
      HANDS_MM_S[random.nextInt(HANDS_MM_S.length)]
    };
  }

  /** Places on the power by hand grid in random order, each once before any twice. */
  private static List<int[]> settings(int count, Random random) {
    List<int[]> order = new ArrayList<>();
    while (order.size() < count) {
      List<int[]> grid = new ArrayList<>();
      for (int p = 0; p < POWERS_PERCENT.length; p++) {
        for (int h = 0; h < HANDS_MM_S.length; h++) {
          grid.add(new int[] {p, h});
        }
      }
      Collections.shuffle(grid, random);
      order.addAll(grid);
    }
    return order;
  }

  private static double noise(Law law, Random random) {
    return law.noise().quantile(Math.max(1e-12, random.nextDouble()));
  }

  private static int[] upTo(int passes) {
    int[] all = new int[passes];
    for (int k = 0; k < passes; k++) {
      all[k] = k + 1;
    }
    return all;
  }

  /** What was judged after each of these numbers of passes, up to the first char. */
  private static List<ShopBench.Seen> seen(
      int[] reads, double charsAt, double clearsAt, double misgraded, Random random) {
    List<ShopBench.Seen> all = new ArrayList<>();
    for (int passes : reads) {
      boolean charred = passes >= charsAt;
      boolean cleared = passes >= clearsAt;
      if (random.nextDouble() < misgraded) {
        if (random.nextBoolean()) {
          charred = !charred;
        } else {
          cleared = !cleared;
        }
      }
      all.add(new ShopBench.Seen(passes, charred, cleared));
      if (charred) {
        break;
      }
    }
    return all;
  }
}
