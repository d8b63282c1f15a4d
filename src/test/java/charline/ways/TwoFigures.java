package charline.ways;

import charline.exposure.Figure;
import charline.model.Trials;
import charline.model.way.Way;
import charline.shops.Law;
import charline.shops.Scenario;
import charline.shops.Shop;
import charline.shops.ShopBench;
import charline.shops.Truth;
import charline.trial.Circumstances;
import charline.trial.Knob;
import charline.trial.Patch;
import charline.trial.Stratum;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;

/**
 * A simulated shop that burned its patches with two figures, each board carrying both.
 *
 * @param line what is true of lines
 * @param circle what is true of circles
 * @param patches what it burned and saw
 */
public record TwoFigures(Truth line, Truth circle, List<Patch> patches) {
  private static final int[] READS = {1, 2, 3, 4, 5, 6};

  /**
   * A kind of such shops.
   *
   * @param code short name, also the key of its results
   * @param lnChar by how much more dose circles take until they char, in ln dose
   * @param lnClearing the same until they clear
   * @param every one patch in so many is a circle
   */
  public record Kind(String code, double lnChar, double lnClearing, int every) {}

  /** Shop number {@code number} of a kind; the same number gives the same shop. */
  public static TwoFigures draw(Kind kind, Scenario scenario, int number) {
    Random random = new Random(31L * kind.code().hashCode() + 1_000_003L * number);
    Truth line = Truth.draw(scenario, random);
    Truth circle =
        new Truth(
            moved(line.charring(), kind.lnChar()),
            moved(line.clearing(), kind.lnClearing()),
            line.misgraded(),
            line.heavyTailed());
    double[][] shifts = new double[scenario.boardCount()][2];
    for (double[] shift : shifts) {
      shift[0] = line.shift(random);
      shift[1] = line.shift(random);
    }
    List<int[]> order = Shop.settings(scenario.patches(), random);
    List<Patch> patches = new ArrayList<>();
    for (int i = 0; i < scenario.patches(); i++) {
      double[] knobs = Shop.at(order.get(i));
      int board = i % scenario.boardCount();
      boolean round = i / scenario.boardCount() % kind.every() == kind.every() - 1;
      Truth truth = round ? circle : line;
      Truth.Outcome came =
          truth.burn(
              Math.log(ShopBench.dose(knobs[0], knobs[1])),
              Math.log(ShopBench.intensity(knobs[0])),
              shifts[board],
              random);
      patches.add(
          ShopBench.patch(i, board, knobs[0], knobs[1], truth.seen(READS, came, random))
              .with(
                  Circumstances.of(
                      Map.of(Knob.FIGURE, (round ? Figure.CIRCLE : Figure.LINE).word()))));
    }
    return new TwoFigures(line, circle, patches);
  }

  private static Law moved(Law law, double by) {
    return law.moved(by);
  }

  /** Trials whose answers are for one figure. */
  public Trials asking(Figure figure) {
    return new Trials(
        Stratum.of(patches.get(0)), patches, false, Way.UNSAID.with(Optional.of(figure)));
  }

  /** The same as if nobody had noted a figure. */
  public Trials pooled() {
    return new Trials(
        Stratum.of(patches.get(0)),
        patches.stream().map(p -> p.with(Circumstances.UNKNOWN)).toList(),
        false);
  }
}
