package charline.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.model.Fitter;
import charline.model.PieceFits;
import charline.model.Trials;
import charline.trial.Board;
import charline.trial.Patch;
import charline.trial.Pieces;
import charline.trial.Stratum;
import charline.window.Forecast;
import charline.window.Recommendation;
import charline.window.Requirements;
import charline.window.Standing;
import charline.window.Verdict;
import charline.window.WindowFinder;
import charline.wording.PlanText;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What to burn on one piece: to place it among boards, then to confirm its window. */
class PiecePlanTest {
  private static final int PIECE = 7;
  private static final Board DOOR = InventedShop.board(PIECE);
  private static final Planner PLANNER = Planner.withDefaults();
  private static final Map<List<Patch>, Recommendation> GENERAL = new HashMap<>();

  /** A shop with a ladder on each of three boards, read to six passes. */
  private static InventedShop shop(double gap) {
    InventedShop shop = InventedShop.draw(gap, 0.1, 3);
    for (int k = 0; k < 24; k++) {
      double dose = 2 * Math.pow(1.25, k % 12);
      shop.burn(
          InventedShop.BENCH.settings(40, InventedShop.BENCH.speedForDose(40, dose)), k % 3, 6);
    }
    return shop;
  }

  private static Trials trials(List<Patch> patches) {
    return new Trials(Stratum.of(patches.get(0)), patches, false);
  }

  /** The same boards, the same answer: found once for several tests. */
  private static Recommendation general(InventedShop shop) {
    return GENERAL.computeIfAbsent(
        shop.patches().stream().filter(p -> !p.board().id().equals(DOOR.id())).toList(),
        others ->
            WindowFinder.withDefaults()
                .recommend(trials(others), InventedShop.BENCH, Requirements.USUAL));
  }

  private static Optional<Recommendation> known(InventedShop shop) {
    Trials trials = trials(shop.patches());
    return shop.patches().stream().anyMatch(p -> p.board().id().equals(DOOR.id()))
        ? Optional.of(
            WindowFinder.withDefaults()
                .recommend(
                    trials,
                    InventedShop.BENCH,
                    Requirements.USUAL,
                    PieceFits.of(Fitter.withDefaults(), trials, DOOR)))
        : Optional.empty();
  }

  private static NextPatches next(InventedShop shop, Site site) {
    return PLANNER.onPiece(trials(shop.patches()), DOOR, general(shop), known(shop), site, 6);
  }

  private static void burn(InventedShop shop, NextPatches next) {
    next.suggestions().forEach(s -> shop.burn(s.settings(), PIECE, s.passes()));
  }

  @Test
  void two_patches_at_the_start_and_three_hotter_place_a_piece() {
    InventedShop shop = shop(1.3);
    Forecast start = general(shop).chosen().orElseThrow().start();
    NextPatches next = next(shop, Site.HIDDEN);

    assertThat(next.suggestions()).hasSize(5);
    double[] factors = {1, 1, 1.25, 1.55, 1.9};
    for (int k = 0; k < factors.length; k++) {
      Suggestion s = next.suggestions().get(k);
      // A hand is led in whole millimetres a second, rounded up so that no dose is exceeded.
      assertThat(s.setting().doseJoulesPerCm2() / start.doseJoulesPerCm2())
          .isBetween(0.93 * factors[k], 1.0001 * factors[k]);
      assertThat(s.place().board()).contains(DOOR);
      assertThat(s.passes()).isEqualTo(6);
    }
    Advice.OnHiddenPlace advice = (Advice.OnHiddenPlace) next.advice();
    assertThat(advice.expectedBrown())
        .isCloseTo(
            next.suggestions().stream().mapToDouble(Suggestion::charRiskMean).sum(), within(1e-12));
    assertThat(PlanText.advice(advice))
        .startsWith("Burn them on a place of boathouse-8 that will not be seen: its back,")
        .containsPattern("Expect about [0-9.]+ of 5 patches to brown");
  }

  @Test
  void what_was_burned_on_the_piece_is_not_asked_for_again() {
    InventedShop shop = shop(0.9);
    NextPatches first = next(shop, Site.HIDDEN);
    first.suggestions().subList(0, 3).forEach(s -> shop.burn(s.settings(), PIECE, s.passes()));
    NextPatches then = next(shop, Site.HIDDEN);
    if (then.window().orElseThrow().verdict() == Verdict.WINDOW) {
      assertThat(then.suggestions()).allMatch(s -> s.purpose() == Purpose.CONFIRM);
    } else {
      assertThat(then.suggestions())
          .extracting(Suggestion::settings)
          .containsExactlyElementsOf(
              first.suggestions().subList(3, 5).stream().map(Suggestion::settings).toList());
    }
  }

  @Test
  void a_window_of_the_piece_is_confirmed_by_clean_controls_at_its_start() {
    InventedShop shop = shop(1.3);
    burn(shop, next(shop, Site.HIDDEN));
    Recommendation found = known(shop).orElseThrow();
    assertThat(found.verdict()).isEqualTo(Verdict.WINDOW);
    NextPatches controls = next(shop, Site.HIDDEN);
    assertThat(controls.suggestions()).hasSize(found.controlsWanting());
    assertThat(controls.suggestions()).allMatch(s -> s.purpose() == Purpose.CONFIRM);

    for (int round = 0;
        round < 5 && !standing(shop).equals(Optional.of(Standing.CONFIRMED));
        round++) {
      burn(shop, next(shop, Site.HIDDEN));
    }
    assertThat(standing(shop)).contains(Standing.CONFIRMED);
    NextPatches none = next(shop, Site.HIDDEN);
    assertThat(none.suggestions()).isEmpty();
    assertThat(PlanText.advice(none.advice()))
        .isEqualTo(
            "Enough control patches on boathouse-8 came out clean: nothing more need be burned"
                + " there.");
  }

  private static Optional<Standing> standing(InventedShop shop) {
    return known(shop).orElseThrow().standing();
  }

  @Test
  void a_piece_with_no_place_to_brown_gets_controls_at_the_start_alone() {
    InventedShop shop = shop(1.3);
    Forecast start = general(shop).chosen().orElseThrow().start();
    NextPatches spare = next(shop, Site.PIECE);
    assertThat(spare.suggestions()).hasSize(3);
    assertThat(spare.suggestions())
        .allMatch(
            s ->
                Math.abs(s.setting().doseJoulesPerCm2() - start.doseJoulesPerCm2()) < 1e-9
                    && s.charRiskUpper() <= 0.05);

    NextPatches without = next(shop(0.2), Site.PIECE);
    assertThat(without.suggestions()).isEmpty();
    assertThat(without.advice()).isEqualTo(new Advice.NothingAllowed(Site.PIECE));
  }

  @Test
  void without_a_general_window_the_plan_begins_where_one_is_most_to_be_hoped_for() {
    InventedShop shop = shop(0.5);
    assertThat(general(shop).verdict()).isEqualTo(Verdict.NOT_YET);
    NextPatches next = next(shop, Site.HIDDEN);
    assertThat(next.suggestions()).hasSize(5);
    List<Double> doses =
        next.suggestions().stream().map(s -> s.setting().doseJoulesPerCm2()).toList();
    assertThat(doses).isSorted();
    assertThat(doses.get(4) / doses.get(0)).isBetween(1.7, 2.0);
  }

  /** A control patch that was judged so, whatever the shop would see. */
  private static Patch judged(InventedShop shop, Forecast start, String outcome) {
    Patch burned =
        shop.burn(
            InventedShop.BENCH.settings(start.powerPercent(), start.speedMillimetresPerSecond()),
            PIECE,
            start.passes());
    Patch judged = Pieces.withReadings(burned, List.of(Pieces.reading(start.passes(), outcome)));
    shop.patches().set(shop.patches().size() - 1, judged);
    return judged;
  }

  @Test
  void after_a_control_that_charred_come_cooler_patches_and_none_hotter() {
    InventedShop shop = shop(1.3);
    burn(shop, next(shop, Site.HIDDEN));
    Forecast start = known(shop).orElseThrow().chosen().orElseThrow().start();
    for (int k = 0; k < 15; k++) {
      judged(shop, start, "clean");
    }
    assertThat(standing(shop)).contains(Standing.CONFIRMED);
    Patch control = judged(shop, start, "char");

    Recommendation then = known(shop).orElseThrow();
    assertThat(then.charredControls()).containsExactly(control.code());
    assertThat(then.verdict()).isEqualTo(Verdict.NOT_YET);
    NextPatches next = next(shop, Site.HIDDEN);
    assertThat(next.suggestions())
        .hasSize(2)
        .allMatch(
            s ->
                s.setting().doseJoulesPerCm2()
                    <= control.exposure().doseJoulesPerCm2() / 1.25 * 1.0001);
    assertThat(PlanText.advice(next.advice()))
        .startsWith("Look at " + control.code() + " again, cold and wiped,");
  }

  /**
   * Where one is hotter than anything burned without char, the one before it must stay unharmed.
   */
  @Test
  void a_patch_above_the_ladder_waits_for_the_one_below() {
    InventedShop shop = InventedShop.draw(1.6, 0.1, 3);
    for (int k = 0; k < 18; k++) {
      double dose = 2 * Math.pow(1.25, k % 9);
      shop.burn(
          InventedShop.BENCH.settings(40, InventedShop.BENCH.speedForDose(40, dose)), k % 3, 6);
    }
    double hottestUnharmed =
        shop.patches().stream()
            .filter(p -> !p.readings().get(0).outcome().charred())
            .mapToDouble(p -> p.exposure().doseJoulesPerCm2())
            .max()
            .orElseThrow();
    for (Suggestion s : next(shop, Site.HIDDEN).suggestions()) {
      boolean above = s.setting().doseJoulesPerCm2() > 1.2501 * hottestUnharmed;
      assertThat(s.onlyAfter().isPresent()).isEqualTo(above);
    }
  }
}
