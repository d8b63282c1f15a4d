package charline.pooling;

import charline.model.Trials;
import charline.shops.Law;
import charline.shops.ShopBench;
import charline.trial.Coat;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;

/**
 * An invented log: coatings and woods whose truths are alike as those of one bench might be, trials
 * of some of them, and a new wood. What clears goes mostly by coating, what chars mostly by wood.
 *
 * @param lenders trials that the log holds already
 * @param charring what is true of char on the new wood
 * @param clearing what is true of clearing on the new wood
 * @param burned every patch of the new wood, in the order of burning
 */
record World(List<Trials> lenders, Law charring, Law clearing, Trials burned) {
  private static final String FAMILY = "latex";
  private static final String WOOD = "larch";
  private static final double[] LN_MIDDLE = {Math.log(44), Math.log(8)};
  private static final int MOST = 18;
  private static final int BOARDS = 3;

  /** How the new wood differs from what its log would make one expect. */
  enum Kind {
    ALIKE("like the others", 0, 0, 6),
    CHARS_SOONER("chars at half the dose", -Math.log(2), 0, 6),
    CLEARS_LATER("takes twice the dose to clear", 0, Math.log(2), 6),
    WEIGHTLESS("fluence and passes hardly count", 0, 0, 6),
    ONE_UNLIKE("chars at half the dose, and only one other stratum lends", -Math.log(2), 0, 1);

    final String words;
    final double charStep;
    final double clearStep;
    final int lenders;

    Kind(String words, double charStep, double clearStep, int lenders) {
      this.words = words;
      this.charStep = charStep;
      this.clearStep = clearStep;
      this.lenders = lenders;
    }
  }

  /** World number {@code number} of a kind; the same number gives the same world. */
  static World draw(Kind kind, int number) {
    Random random = new Random(7919L * number + 13);
    Map<String, double[]> families = new HashMap<>();
    Map<String, double[]> woods = new HashMap<>();
    List<String[]> others =
        List.of(
            new String[] {FAMILY, "pine"},
            new String[] {"varnish", WOOD},
            new String[] {FAMILY, "oak"},
            new String[] {"alkyd", "pine"},
            new String[] {FAMILY, "ash"},
            new String[] {"shellac", "oak"});
    List<Trials> lenders = new ArrayList<>();
    for (String[] other : others) {
      Law[] truth = truths(other[0], other[1], families, woods, random);
      lenders.add(burn(other[0], other[1], truth, 18, new Random(random.nextLong())));
    }
    Law[] own = truths(FAMILY, WOOD, families, woods, random);
    own[0] = own[0].moved(kind.charStep);
    own[1] = own[1].moved(kind.clearStep);
    if (kind == Kind.WEIGHTLESS) {
      for (int k = 0; k < 2; k++) {
        // Turned about two passes, where the others' window is.
        double kept = own[k].tau() - (own[k].psi() - 0.2) * Math.log(2);
        own[k] = ShopBench.law(kept, 0.05, 0.2, own[k].sigma(), own[k].omega());
      }
    }
    return new World(
        lenders.subList(0, kind.lenders),
        own[0],
        own[1],
        burn(FAMILY, WOOD, own, MOST, new Random(random.nextLong())));
  }

  /** The first patches burned on the new wood. */
  Trials first(int count) {
    return new Trials(burned.stratum(), burned.patches().subList(0, count), false);
  }

  private static Law[] truths(
      String family,
      String wood,
      Map<String, double[]> families,
      Map<String, double[]> woods,
      Random random) {
    double[] byFamily = families.computeIfAbsent(family, f -> steps(0.1, 0.4, random));
    double[] byWood = woods.computeIfAbsent(wood, w -> steps(0.3, 0.1, random));
    double[] own = steps(0.1, 0.15, random);
    Law[] both = new Law[2];
    for (int k = 0; k < 2; k++) {
      double tau = LN_MIDDLE[k] + byFamily[k] + byWood[k] + own[k];
      double phi = (k == 0 ? 0.45 : 0.7) + 0.12 * random.nextGaussian();
      double psi = (k == 0 ? 0.55 : 0.75) + 0.12 * random.nextGaussian();
      double sigma = 0.2 * Math.exp(0.25 * random.nextGaussian());
      both[k] = ShopBench.law(tau, Math.max(0.02, phi), Math.max(0.1, psi), sigma, 0.15);
    }
    return both;
  }

  private static double[] steps(double charring, double clearing, Random random) {
    return new double[] {charring * random.nextGaussian(), clearing * random.nextGaussian()};
  }

  private static Trials burn(String family, String wood, Law[] truth, int patches, Random random) {
    Coat coat = new Coat(family, Optional.empty(), OptionalDouble.empty());
    return Yard.burn(
        new Yard.Job(family, wood, truth[0], truth[1], Map.of(), patches, BOARDS),
        (patch, board) -> coat,
        random);
  }
}
