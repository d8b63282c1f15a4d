package charline.shops;

import charline.trial.Patch;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/**
 * One simulated shop.
 *
 * @param truth what is true in it
 * @param patches what it burned and saw
 */
public record Shop(Truth truth, List<Patch> patches) {
  private static final double[] POWERS_PERCENT = {30, 40, 50, 60, 70, 85, 100};
  private static final double[] HANDS_MM_S = {12, 18, 27, 40};
  private static final int MOST_PASSES = 6;

  /** Shop number {@code number} of a scenario; the same number gives the same shop. */
  public static Shop draw(Scenario scenario, int number) {
    Random random = new Random(31L * scenario.code().hashCode() + 1_000_003L * number);
    Truth truth = Truth.draw(scenario, random);
    return new Shop(truth, patches(scenario, truth, random));
  }

  /** What is true of char. */
  public Law charring() {
    return truth.charring();
  }

  /** What is true of clearing. */
  public Law clearing() {
    return truth.clearing();
  }

  /** What a shop burns and sees where this is true. */
  static List<Patch> patches(Scenario s, Truth truth, Random random) {
    double[][] shifts = new double[s.boardCount()][2];
    for (double[] shift : shifts) {
      shift[0] = truth.shift(random);
      shift[1] = truth.shift(random);
    }
    List<int[]> order = settings(s.patches(), random);
    List<Patch> patches = new ArrayList<>();
    for (int i = 0; i < s.patches(); i++) {
      double power = POWERS_PERCENT[order.get(i)[0]];
      double hand = HANDS_MM_S[order.get(i)[1]];
      int board = i % s.boardCount();
      double lnDose = Math.log(ShopBench.dose(power, hand));
      double lnIntensity = Math.log(ShopBench.intensity(power));
      Truth.Outcome came = truth.burn(lnDose, lnIntensity, shifts[board], random);
      int[] reads = s.everyPass() ? upTo(MOST_PASSES) : new int[] {1 + random.nextInt(3)};
      patches.add(ShopBench.patch(i, board, power, hand, truth.seen(reads, came, random)));
    }
    return patches;
  }

  /** Power in percent and hand speed in mm/s of a place on the grid. */
  public static double[] at(int[] place) {
    return new double[] {POWERS_PERCENT[place[0]], HANDS_MM_S[place[1]]};
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
  public static List<int[]> settings(int count, Random random) {
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

  private static int[] upTo(int passes) {
    int[] all = new int[passes];
    for (int k = 0; k < passes; k++) {
      all[k] = k + 1;
    }
    return all;
  }
}
