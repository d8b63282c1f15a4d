package charline.plan;

import charline.model.Fitter;
import charline.model.Trials;
import charline.model.borrow.BoardSpreads;
import charline.model.borrow.Borrowing;
import charline.pooling.Yard;
import charline.shops.Law;
import charline.shops.Truth;
import charline.trial.Coat;
import charline.trial.Stratum;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;

/**
 * What the log of an invented shop holds beside the trials of its campaign: nothing, or 18 patches
 * on 3 boards of each of four other strata, whose truths differ from that of the campaign as those
 * of one bench might.
 *
 * @param boards what the others tell of boards; empty where there are none
 * @param lending what they lend; empty where nobody borrows
 */
record ShopLog(Optional<BoardSpreads> boards, Optional<Borrowing> lending) {
  private static final ShopLog EMPTY = new ShopLog(Optional.empty(), Optional.empty());
  private static final int PATCHES = 18;
  private static final int BOARDS = 3;
  private static final Stratum OWN =
      new Stratum("latex", "pine", InventedShop.HERON.emission(), 1064);

  /** Standard deviation of weights between strata. */
  private static final double WEIGHTS = 0.12;

  /** Another stratum, and by how much its doses differ, as standard deviations in ln dose. */
  private record Other(String family, String wood, double charStep, double clearStep) {}

  /** Clearing goes mostly by coating, char mostly by wood. */
  private static final List<Other> OTHERS =
      List.of(
          new Other("latex", "oak", 0.4, 0.2),
          new Other("latex", "ash", 0.4, 0.2),
          new Other("latex", "larch", 0.4, 0.2),
          new Other("varnish", "pine", 0.15, 0.5));

  /** The log of a shop; the same number gives the same. */
  static ShopLog of(Manner manner, Truth truth, int number) {
    if (!manner.hasLog()) {
      return EMPTY;
    }
    Random random = new Random(104_729L * number + 5);
    List<Trials> others = new ArrayList<>();
    for (Other other : OTHERS) {
      others.add(burn(other, truth, random));
    }
    Fitter fitter = Fitter.withDefaults();
    return new ShopLog(
        Optional.of(new BoardSpreads(fitter, others)),
        manner.borrows() ? Optional.of(new Borrowing(fitter, others)) : Optional.empty());
  }

  private static Trials burn(Other other, Truth truth, Random random) {
    Coat coat = new Coat(other.family(), Optional.empty(), OptionalDouble.empty());
    return Yard.burn(
        new Yard.Job(
            other.family(),
            other.wood(),
            near(truth.charring(), other.charStep(), random),
            near(truth.clearing(), other.clearStep(), random),
            Map.of(),
            PATCHES,
            BOARDS),
        (patch, board) -> coat,
        new Random(random.nextLong()));
  }

  private static Law near(Law law, double step, Random random) {
    return new Law(
        law.tau() + step * random.nextGaussian(),
        Math.max(0.02, law.phi() + WEIGHTS * random.nextGaussian()),
        Math.max(0.1, law.psi() + WEIGHTS * random.nextGaussian()),
        law.sigma(),
        law.omega(),
        law.noise(),
        law.lnReference());
  }

  /** A fitter that knows the log, before any trial of the campaign. */
  Fitter fitter() {
    return boards.map(known -> known.fitterFor(OWN)).orElseGet(Fitter::withDefaults);
  }

  /** The same for the trials so far. */
  Fitter fitter(Trials own) {
    return lending.map(l -> fitter().borrowing(l.loansFor(own))).orElseGet(this::fitter);
  }
}
