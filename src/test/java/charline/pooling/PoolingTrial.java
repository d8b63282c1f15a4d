package charline.pooling;

import charline.model.Fitter;
import charline.model.Trials;
import charline.model.borrow.BoardSpreads;
import charline.model.borrow.Borrowing;
import charline.pooling.World.Kind;
import charline.shops.ShopBench;
import charline.window.Requirements;
import charline.window.RigSetup;
import charline.window.WindowFinder;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What the new wood of one world is told, without and with what it borrows. Either way the log says
 * how much boards differ, as it does in every answer.
 */
final class PoolingTrial {
  static final List<Integer> COUNTS = List.of(6, 12, 18);
  static final String ALONE = "alone";
  static final String BORROWED = "borrowed";

  private PoolingTrial() {}

  /** All kinds of one world; those with the same lenders share their fits. */
  static List<Told> of(int number) {
    List<Told> told = new ArrayList<>();
    Map<Integer, Borrowing> lending = new HashMap<>();
    Map<Integer, BoardSpreads> spreads = new HashMap<>();
    for (Kind kind : Kind.values()) {
      World world = World.draw(kind, number);
      Borrowing others =
          lending.computeIfAbsent(
              kind.lenders, n -> new Borrowing(Fitter.withDefaults(), world.lenders()));
      BoardSpreads boards =
          spreads.computeIfAbsent(
              kind.lenders, n -> new BoardSpreads(Fitter.withDefaults(), world.lenders()));
      for (int count : COUNTS) {
        Trials trials = world.first(count);
        Fitter alone = boards.fitterFor(trials.stratum());
        RigSetup bench = RigSetup.of(ShopBench.RIG, trials.patches(), ShopBench.DAY);
        Map<String, Fitter> ways =
            Map.of(ALONE, alone, BORROWED, alone.borrowing(others.loansFor(trials)));
        ways.forEach(
            (way, fitter) ->
                told.add(
                    Told.of(
                        kind.name(),
                        number,
                        way,
                        new WindowFinder(fitter).recommend(trials, bench, Requirements.USUAL),
                        world.charring(),
                        world.clearing())));
      }
    }
    return told;
  }
}
