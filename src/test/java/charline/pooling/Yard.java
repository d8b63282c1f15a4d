package charline.pooling;

import charline.model.Trials;
import charline.model.way.Trait;
import charline.shops.Law;
import charline.shops.Shop;
import charline.shops.ShopBench;
import charline.shops.Truth;
import charline.trial.Coat;
import charline.trial.Finish;
import charline.trial.Patch;
import charline.trial.Stratum;
import charline.trial.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.UUID;

/**
 * Burns simulated patches with the rig of the shops, read after every pass up to the first char.
 */
public final class Yard {
  private static final int[] PASSES = {1, 2, 3, 4, 5, 6};

  /** Readings here are never misjudged, so what is drawn for that is not taken from the burning. */
  private static final Random NOBODY_ERRS = new Random(0);

  private Yard() {}

  /**
   * What is burned.
   *
   * @param family coating family
   * @param wood wood
   * @param charring what is true of char
   * @param clearing what is true of clearing, for a mid coat of 60 um
   * @param weights true weights of the coat's terms in ln dose
   * @param patches how many
   * @param boards on how many boards, in turn
   */
  public record Job(
      String family,
      String wood,
      Law charring,
      Law clearing,
      Map<Trait, Double> weights,
      int patches,
      int boards) {}

  /** Which coat each patch has. */
  public interface Coats {
    Coat coat(int patch, int board);
  }

  /** Trials of a job; the same random numbers give the same trials. */
  public static Trials burn(Job job, Coats coats, Random random) {
    double[][] shifts = new double[job.boards()][2];
    for (double[] shift : shifts) {
      shift[0] = random.nextGaussian();
      shift[1] = random.nextGaussian();
    }
    List<int[]> order = Shop.settings(job.patches(), random);
    List<Patch> patches = new ArrayList<>();
    for (int i = 0; i < job.patches(); i++) {
      int board = i % job.boards();
      double[] setting = Shop.at(order.get(i));
      double lnDose = Math.log(ShopBench.dose(setting[0], setting[1]));
      double lnFluence = Math.log(ShopBench.intensity(setting[0]));
      Coat coat = coats.coat(i, board);
      Truth truth =
          new Truth(job.charring(), job.clearing().moved(shift(coat, job.weights())), 0, false);
      Truth.Outcome came = truth.burn(lnDose, lnFluence, shifts[board], random);
      patches.add(patch(job, i, board, setting, coat, truth.seen(PASSES, came, NOBODY_ERRS)));
    }
    return new Trials(Stratum.of(patches.get(0)), patches, false);
  }

  private static double shift(Coat coat, Map<Trait, Double> weights) {
    double tone =
        coat.tone().map(t -> t == Tone.PALE ? 0.5 : t == Tone.DARK ? -0.5 : 0).orElse(0.0);
    double thickness = Math.log(coat.thicknessMicrometres().orElse(60) / 60);
    return weights.getOrDefault(Trait.TONE, 0.0) * tone
        + weights.getOrDefault(Trait.THICKNESS, 0.0) * thickness;
  }

  private static Patch patch(
      Job job, int number, int board, double[] setting, Coat coat, List<ShopBench.Seen> seen) {
    return new Patch(
        new UUID(3, number),
        "Y-%04d".formatted(number),
        ShopBench.DAY,
        ShopBench.RIG,
        ShopBench.board(
            new UUID(job.wood().hashCode(), board), job.wood() + " " + board, job.wood()),
        new Finish(
            new UUID(job.family().hashCode(), coat.hashCode()),
            job.family() + " " + coat,
            job.family(),
            List.of(coat)),
        ShopBench.settings(setting[0], setting[1]),
        OptionalDouble.empty(),
        ShopBench.readings(number, seen, ShopBench.DAY));
  }
}
