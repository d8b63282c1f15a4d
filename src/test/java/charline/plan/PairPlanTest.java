package charline.plan;

import static org.assertj.core.api.Assertions.assertThat;

import charline.model.Trials;
import charline.trial.Stratum;
import charline.window.Requirements;
import charline.window.WindowFinder;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Pairs climb no faster than any other patch. */
class PairPlanTest {
  private static PairPlan.Way cool(double hottest) {
    InventedShop shop = InventedShop.draw(1, 0.1, 3);
    for (int k = 0; k < 6; k++) {
      double dose = hottest / Math.pow(1.25, 5 - k);
      shop.burn(
          InventedShop.BENCH.settings(40, InventedShop.BENCH.speedForDose(40, dose)), k % 3, 1);
    }
    assertThat(shop.patches()).noneMatch(patch -> patch.lastReading().outcome().charred());
    Trials trials = new Trials(Stratum.of(shop.patches().get(0)), shop.patches(), false);
    return new PairPlan.Way(
        trials,
        WindowFinder.withDefaults().recommend(trials, InventedShop.BENCH, Requirements.USUAL));
  }

  /** A patch that chars by its sixth pass would take several times what these bore. */
  @Test
  void no_pair_is_hotter_than_a_quarter_above_what_the_cooler_way_bore() {
    PairList list =
        new PairPlan(Planner.withDefaults()).pairs(cool(1), cool(2), Site.OFFCUT, List.of(), 6);

    assertThat(list.pairs())
        .hasSize(6)
        .allSatisfy(
            pair ->
                assertThat(pair.burns())
                    .hasSize(2)
                    .allSatisfy(
                        burn ->
                            assertThat(burn.setting().doseJoulesPerCm2())
                                .isLessThanOrEqualTo(1.2500001)));
  }
}
