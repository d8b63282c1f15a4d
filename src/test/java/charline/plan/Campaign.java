package charline.plan;

import charline.model.Fitter;
import charline.model.Trials;
import charline.shops.Scenario;
import charline.trial.Stratum;
import charline.window.Box;
import charline.window.Recommendation;
import charline.window.Requirements;
import charline.window.Verdict;
import charline.window.WindowFinder;
import java.util.Optional;

/**
 * One shop burning in one manner, looking for a window after every patch, until one stands.
 *
 * @param end how it ended
 * @param patches burned until then
 * @param boards burned on
 * @param readings made of them, one after every pass
 * @param charred patches that charred on the way
 * @param offLadder true if a patch was burned above the ladder
 * @param charRisk true char risk at the hot corner of the window, on a new board; 0 without window
 * @param clearing true clearing chance at the cold corner, on a new board; 1 without window
 * @param seconds of one core
 */
record Campaign(
    End end,
    int patches,
    int boards,
    int readings,
    int charred,
    boolean offLadder,
    double charRisk,
    double clearing,
    double seconds) {
  /** No shop burns more. */
  static final int MOST = 30;

  /** No window rests on fewer, so only the planner needs the models before. */
  private static final int FEWEST = 6;

  /** How a campaign ends. */
  enum End {
    /** A window stands. */
    WINDOW,
    /** Told to use another method. */
    NONE,
    /** Neither, after {@link #MOST} patches, or nothing left that may be burned. */
    OPEN
  }

  static Campaign run(Scenario scenario, int number, Manner manner) {
    long begun = System.nanoTime();
    InventedShop shop = InventedShop.draw(scenario, number);
    ShopLog log = ShopLog.of(manner, shop.truth, number);
    Fitter fitter = log.fitter();
    Optional<Recommendation> found = Optional.empty();
    while (shop.patches().size() < MOST) {
      Planner planner = new Planner(fitter, Planner.BOARDS);
      Manner.Choice choice = manner.choose(planner, shop, found, number);
      if (choice == null) {
        break;
      }
      shop.burn(choice.settings(), choice.board(), Planner.PASSES);
      int patches = shop.patches().size();
      if (!manner.plans() && patches < FEWEST) {
        continue;
      }
      Trials trials = new Trials(Stratum.of(shop.patches().get(0)), shop.patches(), false);
      fitter = log.fitter(trials);
      Recommendation now = look(new WindowFinder(fitter), trials);
      if (decided(now)) {
        return ended(shop, now.chosen(), begun);
      }
      found = Optional.of(now);
    }
    return campaign(End.OPEN, shop, 0, 1, begun);
  }

  /** The program's answer; the checks of a fit are made only where they may change it. */
  private static Recommendation look(WindowFinder finder, Trials trials) {
    Recommendation unchecked =
        finder.recommend(
            Unchecked.models(finder.fitter(), trials), InventedShop.BENCH, Requirements.USUAL);
    return decided(unchecked)
        ? finder.recommend(
            trials,
            InventedShop.BENCH,
            Requirements.USUAL,
            unchecked.charFit().orElseThrow(),
            unchecked.clearingFit().orElseThrow())
        : unchecked;
  }

  private static boolean decided(Recommendation answer) {
    return answer.verdict() == Verdict.WINDOW || answer.verdict() == Verdict.NONE;
  }

  private static Campaign ended(InventedShop shop, Optional<Box> window, long begun) {
    return window
        .map(
            box ->
                campaign(
                    End.WINDOW,
                    shop,
                    shop.truth
                        .charring()
                        .newBoardChance(
                            box.hotCorner().doseJoulesPerCm2(),
                            box.hotCorner().intensity(),
                            box.passes()),
                    shop.truth
                        .clearing()
                        .newBoardChance(
                            box.coldCorner().doseJoulesPerCm2(),
                            box.coldCorner().intensity(),
                            box.passes()),
                    begun))
        .orElseGet(() -> campaign(End.NONE, shop, 0, 1, begun));
  }

  private static Campaign campaign(
      End end, InventedShop shop, double charRisk, double clearing, long begun) {
    int charred =
        (int) shop.patches().stream().filter(p -> p.lastReading().outcome().charred()).count();
    return new Campaign(
        end,
        shop.patches().size(),
        shop.boards(),
        shop.patches().stream().mapToInt(p -> p.readings().size()).sum(),
        charred,
        LadderRule.broken(shop.patches()),
        charRisk,
        clearing,
        (System.nanoTime() - begun) / 1e9);
  }

  boolean found() {
    return end == End.WINDOW;
  }

  boolean charBroken() {
    return charRisk > Requirements.USUAL.charRisk();
  }

  boolean clearingBroken() {
    return clearing < Requirements.USUAL.clearChance();
  }
}
