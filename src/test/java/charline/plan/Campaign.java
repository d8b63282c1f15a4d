package charline.plan;

import charline.model.Trials;
import charline.trial.Patch;
import charline.trial.Stratum;
import charline.window.Asked;
import charline.window.Box;
import charline.window.Recommendation;
import charline.window.Verdict;
import charline.window.WindowFinder;
import java.util.List;
import java.util.Optional;

/**
 * One shop burning in one manner, looking for a window after every patch, until one stands.
 *
 * @param patches burned until the window stood, or until it gave up
 * @param found true if a window stood
 * @param kept true if, by the true laws, its corners keep what was asked
 * @param charred patches that charred on the way
 * @param broken true if a patch was burned above the ladder
 */
record Campaign(int patches, boolean found, boolean kept, int charred, boolean broken) {
  /** No shop burns more. */
  static final int MOST = 40;

  static Campaign run(double gap, double omega, int number, Manner manner) {
    InventedShop shop = InventedShop.draw(gap, omega, number);
    WindowFinder finder = WindowFinder.withDefaults();
    Optional<Recommendation> found = Optional.empty();
    while (shop.patches().size() < MOST) {
      Manner.Choice choice = manner.choose(shop, found, number);
      if (choice == null) {
        break;
      }
      shop.burn(choice.settings(), choice.board(), Planner.PASSES);
      if (manner != Manner.NEXT && shop.patches().size() < 6) {
        continue; // no window rests on fewer
      }
      List<Patch> patches = shop.patches();
      Recommendation now =
          finder.recommend(
              new Trials(Stratum.of(patches.get(0)), patches, false),
              InventedShop.BENCH,
              Asked.USUAL);
      if (now.verdict() == Verdict.WINDOW) {
        return of(shop, true, keeps(shop, now.chosen().orElseThrow()));
      }
      if (now.verdict() == Verdict.NONE && patches.size() >= Planner.FEWEST_FOR_NONE) {
        break; // told to use another method, whatever the manner
      }
      found = Optional.of(now);
    }
    return of(shop, false, true);
  }

  private static Campaign of(InventedShop shop, boolean found, boolean kept) {
    int charred =
        (int) shop.patches().stream().filter(p -> p.lastReading().outcome().charred()).count();
    return new Campaign(
        shop.patches().size(), found, kept, charred, LadderRule.broken(shop.patches()));
  }

  private static boolean keeps(InventedShop shop, Box box) {
    return shop.charring.newBoardChance(
                box.hotCorner().doseJoulesPerCm2(), box.hotCorner().intensity(), box.passes())
            <= Asked.USUAL.charRisk()
        && shop.clearing.newBoardChance(
                box.coldCorner().doseJoulesPerCm2(), box.coldCorner().intensity(), box.passes())
            >= Asked.USUAL.clearChance();
  }
}
