package charline.window;

import static org.assertj.core.api.Assertions.assertThat;

import charline.model.Posterior;
import charline.model.ReferenceStrata;
import charline.model.Trials;
import charline.shops.Scenario;
import charline.shops.Shop;
import charline.shops.ShopBench;
import charline.trial.Patch;
import charline.trial.Stratum;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Where there is room, a window clears with half of the doubt that was asked for. */
class SurerClearingTest {
  private static final int SHOPS = 24;

  private static Recommendation recommend(Trials trials) {
    RigSetup bench =
        RigSetup.of(RigSetup.mostUsedRig(trials.patches()), trials.patches(), ShopBench.DAY);
    return WindowFinder.withDefaults().recommend(trials, bench, Requirements.USUAL);
  }

  private static Trials shop(int number) {
    List<Patch> patches = Shop.draw(Scenario.usual().burning(24, 3), number).patches();
    return new Trials(Stratum.of(patches.get(0)), patches, false);
  }

  /** The clearing chance that a corner keeps with half the doubt that was asked for. */
  private static double sure(Recommendation answer, Forecast corner) {
    Posterior clearing = answer.clearingFit().orElseThrow().posterior();
    return clearing.quantile(
        clearing.newBoardChance(corner.doseJoulesPerCm2(), corner.intensity(), corner.passes()),
        (1 - Requirements.USUAL.confidence()) / 2);
  }

  private static List<PassSearch> searches(Trials trials, Recommendation answer) {
    TriedRegion reach = new TriedRegion(trials.patches());
    RiskBounds promises =
        new RiskBounds(
            Requirements.USUAL,
            answer.charFit().orElseThrow(),
            answer.clearingFit().orElseThrow(),
            answer.bench().strokes());
    return PassNumbers.between(reach.passesTried()).stream()
        .map(
            passes ->
                new PassSearch(
                    answer.bench(),
                    reach,
                    TriedKnobs.of(trials.patches()),
                    new SupportingPatches(trials),
                    promises,
                    passes))
        .toList();
  }

  @Test
  void the_coldest_corner_clears_with_half_the_doubt_where_there_is_room() {
    Recommendation answer = recommend(ReferenceStrata.trials("latex", "pine"));

    assertThat(sure(answer, answer.chosen().orElseThrow().coldCorner()))
        .isGreaterThanOrEqualTo(Requirements.USUAL.clearChance());
  }

  /** Of these shops some have room for it and some have not. */
  @Test
  void no_window_is_lost_by_it() {
    int surer = 0;
    int asAsked = 0;
    for (int number = 1; number <= SHOPS; number++) {
      Trials trials = shop(number);
      Recommendation answer = recommend(trials);
      if (answer.verdict() == Verdict.WINDOW) {
        Forecast corner = answer.chosen().orElseThrow().coldCorner();
        assertThat(corner.clearChanceLower())
            .isGreaterThanOrEqualTo(Requirements.USUAL.clearChance());
        boolean room =
            searches(trials, answer).stream().anyMatch(search -> search.surerBox().isPresent());
        assertThat(sure(answer, corner) >= Requirements.USUAL.clearChance())
            .as("shop %d", number)
            .isEqualTo(room);
        surer += room ? 1 : 0;
        asAsked += room ? 0 : 1;
      } else {
        assertThat(answer.chosen()).isEmpty();
      }
    }
    assertThat(surer).isPositive();
    assertThat(asAsked).isPositive();
  }
}
