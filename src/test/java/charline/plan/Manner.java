package charline.plan;

import charline.exposure.Settings;
import charline.model.Trials;
import charline.trial.Board;
import charline.trial.Patch;
import charline.trial.Stratum;
import charline.window.Recommendation;
import charline.window.Requirements;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;

/** A manner of choosing the next patch. All judge after every pass up to the same number. */
enum Manner {
  /** What the planner says where the log holds nothing else. */
  NEXT {
    @Override
    Choice choose(Planner planner, InventedShop shop, Optional<Recommendation> found, long seed) {
      return planned(planner, shop, found);
    }
  },
  /** The same in a log with trials of other coatings and woods, which tell how boards differ. */
  LOG {
    @Override
    Choice choose(Planner planner, InventedShop shop, Optional<Recommendation> found, long seed) {
      return planned(planner, shop, found);
    }
  },
  /** The same with {@code --borrow}: those trials also lend what they say of dose. */
  BORROW {
    @Override
    Choice choose(Planner planner, InventedShop shop, Optional<Recommendation> found, long seed) {
      return planned(planner, shop, found);
    }
  },
  /**
   * One knob at a time: up by a quarter from the planner's own first setting until the first brown,
   * then on the next board from three rungs below that brown.
   */
  LADDER {
    @Override
    Choice choose(Planner planner, InventedShop shop, Optional<Recommendation> found, long seed) {
      int rung = 0;
      int board = 0;
      for (Patch patch : shop.patches()) {
        if (patch.lastReading().outcome().charred()) {
          rung = Math.max(0, rung - 3);
          board++;
        } else {
          rung++;
        }
      }
      double dose = FIRST.setting().doseJoulesPerCm2() * Math.pow(1.25, rung);
      double power = FIRST.setting().powerPercent();
      return new Choice(
          settings(power, InventedShop.BENCH.speedForDose(power, dose)), board % boards(found));
    }
  },
  /** Five powers by five hand speeds about the window, cool first, from board to board. */
  GRID {
    @Override
    Choice choose(Planner planner, InventedShop shop, Optional<Recommendation> found, long seed) {
      int n = shop.patches().size();
      return new Choice(grid().get(n % 25), n % boards(found));
    }
  },
  /** The same grid in random order, each setting once before any twice. */
  RANDOM {
    @Override
    Choice choose(Planner planner, InventedShop shop, Optional<Recommendation> found, long seed) {
      int n = shop.patches().size();
      List<Settings> order = new ArrayList<>(grid());
      Collections.shuffle(order, new Random(seed + n / 25));
      return new Choice(order.get(n % 25), n % boards(found));
    }
  };

  private static final Suggestion FIRST =
      Planner.withDefaults()
          .first(InventedShop.BENCH, Requirements.USUAL, Site.OFFCUT, List.of(), 1)
          .suggestions()
          .get(0);

  /** What to burn and on which board. */
  record Choice(Settings settings, int board) {}

  /**
   * The next patch, or null to give up.
   *
   * @param planner knows what the log holds
   * @param found the answer so far; empty where nobody has looked yet
   */
  abstract Choice choose(
      Planner planner, InventedShop shop, Optional<Recommendation> found, long seed);

  /** Whether the planner chooses, who wants an answer after every patch. */
  boolean plans() {
    return this == NEXT || hasLog();
  }

  /** Whether the log holds other trials. */
  boolean hasLog() {
    return this == LOG || borrows();
  }

  /** Whether they lend. */
  boolean borrows() {
    return this == BORROW;
  }

  private static Choice planned(
      Planner planner, InventedShop shop, Optional<Recommendation> found) {
    List<Patch> patches = shop.patches();
    int atHand = Math.max(Planner.BOARDS, shop.boards());
    List<Board> boards = IntStream.range(0, atHand).mapToObj(InventedShop::board).toList();
    NextPatches next =
        patches.isEmpty()
            ? planner.first(InventedShop.BENCH, Requirements.USUAL, Site.OFFCUT, boards, 1)
            : planner.next(
                new Trials(Stratum.of(patches.get(0)), patches, false),
                found.orElseThrow(),
                Site.OFFCUT,
                boards,
                1);
    if (next.suggestions().isEmpty()) {
      return null;
    }
    Suggestion s = next.suggestions().get(0);
    return new Choice(s.settings(), s.place().board().map(boards::indexOf).orElse(atHand));
  }

  /** As many as the planner asks for, whatever the manner. */
  private static int boards(Optional<Recommendation> found) {
    return Math.max(Planner.BOARDS, found.map(Recommendation::boardsWanted).orElse(0));
  }

  private static Settings settings(double power, double speed) {
    return InventedShop.BENCH.settings(power, speed);
  }

  private static List<Settings> grid() {
    List<Settings> grid = new ArrayList<>();
    for (double power : new double[] {40, 50, 60, 80, 100}) {
      for (double hand : new double[] {12, 17, 24, 34, 48}) {
        grid.add(settings(power, hand));
      }
    }
    grid.sort(
        Comparator.comparingDouble(
            s -> s.power().value() / s.form().areaRate().squareCentimetresPerSecond()));
    return grid;
  }
}
