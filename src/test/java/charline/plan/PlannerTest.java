package charline.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.model.Trials;
import charline.trial.Board;
import charline.trial.Patch;
import charline.trial.Pieces;
import charline.trial.Reading;
import charline.trial.RigBuilder;
import charline.trial.Stratum;
import charline.window.Requirements;
import charline.window.RigSetup;
import charline.wording.PlanText;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What the planner says from nothing, from few patches and where a window stands. */
class PlannerTest {
  private static final Planner PLANNER = Planner.withDefaults();
  private static final List<Board> BOARDS =
      IntStream.range(0, 3).mapToObj(InventedShop::board).toList();

  private static NextPatches next(InventedShop shop, Site site, int count) {
    return next(shop, InventedShop.BENCH, site, count);
  }

  private static NextPatches next(InventedShop shop, RigSetup bench, Site site, int count) {
    List<Patch> patches = shop.patches();
    return PLANNER.next(
        new Trials(Stratum.of(patches.get(0)), patches, false),
        bench,
        Requirements.USUAL,
        site,
        BOARDS,
        count);
  }

  /** A wide window, found by a ladder of ours over three boards. */
  private static InventedShop climbed(double gap, int patches) {
    InventedShop shop = InventedShop.draw(gap, 0.1, 3);
    for (int k = 0; k < patches; k++) {
      double dose = 2 * Math.pow(1.25, k % 12);
      shop.burn(
          InventedShop.BENCH.settings(40, InventedShop.BENCH.speedForDose(40, dose)), k % 3, 4);
    }
    return shop;
  }

  @Test
  void from_nothing_a_ladder_rises_by_at_most_a_quarter_from_a_safe_dose() {
    NextPatches next =
        PLANNER.first(InventedShop.BENCH, Requirements.USUAL, Site.OFFCUT, List.of(), 6);

    assertThat(PlanText.standing(next.standing()))
        .isEqualTo(
            "Nothing has been burned yet: the ladder begins at a dose that is safe by the priors.");
    assertThat(next.suggestions()).hasSize(6);
    assertThat(PlanText.motive(next.suggestions().get(0).motive())).isEqualTo("lowest rung");
    assertThat(next.suggestions().stream().map(s -> s.place().name()).distinct())
        .containsExactlyInAnyOrder(
            "new board 1", "new board 2", "new board 3", "new board 4", "new board 5");
    for (int k = 1; k < 6; k++) {
      DialSetting below = next.suggestions().get(k - 1).setting();
      DialSetting rung = next.suggestions().get(k).setting();
      assertThat(rung.doseJoulesPerCm2()).isLessThanOrEqualTo(1.2500001 * below.doseJoulesPerCm2());
      assertThat(rung.intensity()).isLessThanOrEqualTo(1.2500001 * below.intensity());
      assertThat(next.suggestions().get(k).onlyAfter()).hasValue(k);
    }
  }

  @Test
  void power_climbs_before_the_hand_slows_down() {
    NextPatches next =
        PLANNER.first(InventedShop.BENCH, Requirements.USUAL, Site.OFFCUT, List.of(), 6);

    assertThat(next.suggestions().get(5).setting().powerPercent())
        .isGreaterThan(next.suggestions().get(0).setting().powerPercent());
    assertThat(next.suggestions())
        .allMatch(s -> s.setting().speedMillimetresPerSecond() <= 60, "an easy speed");
  }

  /** 2 mJ at the rig's rate are far less than its rating. */
  @Test
  void no_patch_asks_for_more_than_the_largest_pulse() {
    RigSetup bench =
        InventedShop.BENCH.withRig(
            RigBuilder.like(InventedShop.HERON).largestPulseMillijoules(2).build());
    double highest = bench.highestPercent();
    assertThat(highest).isLessThan(60);
    assertThat(PLANNER.first(bench, Requirements.USUAL, Site.OFFCUT, List.of(), 12).suggestions())
        .isNotEmpty()
        .allSatisfy(s -> assertThat(s.setting().powerPercent()).isLessThanOrEqualTo(highest));
    assertThat(next(climbed(1, 12), bench, Site.OFFCUT, 6).suggestions())
        .isNotEmpty()
        .allSatisfy(s -> assertThat(s.setting().powerPercent()).isLessThanOrEqualTo(highest));
  }

  @Test
  void where_only_three_boards_can_be_had_three_will_do() {
    NextPatches next =
        PLANNER
            .withFewBoards()
            .first(InventedShop.BENCH, Requirements.USUAL, Site.OFFCUT, List.of(), 6);

    assertThat(next.suggestions().stream().map(s -> s.place().name()).distinct())
        .containsExactlyInAnyOrder("new board 1", "new board 2", "new board 3");
  }

  @Test
  void one_control_patch_is_asked_for_not_several_in_a_row() {
    InventedShop shop = climbed(1, 7);
    Suggestion control = next(shop, Site.OFFCUT, 1).suggestions().get(0);
    assertThat(control.purpose()).isEqualTo(Purpose.CONTROL);
    shop.burn(control.settings(), 0, 4);
    assertThat(next(shop, Site.OFFCUT, 7).suggestions())
        .extracting(Suggestion::purpose)
        .doesNotContain(Purpose.CONTROL);
  }

  @Test
  void from_nothing_nothing_is_burned_on_the_piece() {
    NextPatches next = PLANNER.first(InventedShop.BENCH, Requirements.USUAL, Site.PIECE, BOARDS, 6);

    assertThat(next.suggestions()).isEmpty();
    assertThat(PlanText.standing(next.standing()))
        .isEqualTo("Nothing has been burned yet, so do not burn on the piece.");
  }

  @Test
  void the_same_trials_give_the_same_list() {
    InventedShop shop = climbed(1, 5);

    assertThat(next(shop, Site.OFFCUT, 4).suggestions())
        .isEqualTo(next(shop, Site.OFFCUT, 4).suggestions());
  }

  @Test
  void speeds_and_powers_are_ones_that_a_person_can_dial() {
    for (Suggestion s : next(climbed(1, 5), Site.OFFCUT, 6).suggestions()) {
      if (s.purpose() == Purpose.CONTROL) {
        continue; // repeats what somebody dialled
      }
      assertThat(s.setting().powerPercent() % 5).isZero();
      assertThat(2 * s.setting().speedMillimetresPerSecond() % 1).isZero();
    }
  }

  @Test
  void every_eighth_patch_is_a_control_patch_at_a_setting_tried_without_char() {
    InventedShop shop = climbed(0.3, 5);
    List<Suggestion> list = next(shop, Site.OFFCUT, 12).suggestions();

    assertThat(list.get(2).purpose()).isEqualTo(Purpose.CONTROL);
    assertThat(PlanText.motive(list.get(2).motive()))
        .isEqualTo("control patch: has the rig drifted?");
    assertThat(list.get(10).purpose()).isEqualTo(Purpose.CONTROL);
    assertThat(list.stream().filter(s -> s.purpose() == Purpose.CONTROL)).hasSize(2);
    assertThat(shop.patches().stream().map(Patch::settings)).contains(list.get(2).settings());
    assertThat(list.get(10).settings()).isEqualTo(list.get(2).settings());
  }

  /** Boards differ, so a control patch on another board could not tell drift from the board. */
  @Test
  void the_control_patch_stays_on_the_board_that_is_kept_for_it() {
    for (int patches : new int[] {5, 7, 9, 15, 17}) {
      InventedShop shop = climbed(0.6, patches);
      Set<String> boards = new HashSet<>();
      for (Suggestion s : next(shop, Site.OFFCUT, 24).suggestions()) {
        if (s.purpose() == Purpose.CONTROL) {
          boards.add(s.place().name());
          assertThat(shop.patches())
              .as("%d patches, control on %s", patches, s.place().name())
              .anyMatch(
                  p ->
                      p.settings().equals(s.settings())
                          && p.board().name().equals(s.place().name()));
        }
      }
      assertThat(boards).as("%d patches", patches).hasSize(1);
    }
  }

  /** Four boards with six patches each and one to be found: it does not get all of a list. */
  @Test
  void a_new_board_gets_at_most_half_of_a_list() {
    InventedShop shop = InventedShop.draw(0.3, 0.15, 6);
    for (int k = 0; k < 24; k++) {
      double dose = 4 * Math.pow(1.25, k % 9);
      shop.burn(
          InventedShop.BENCH.settings(60, InventedShop.BENCH.speedForDose(60, dose)), k % 4, 8);
    }
    List<Board> atHand = IntStream.range(0, 4).mapToObj(InventedShop::board).toList();
    List<Patch> patches = shop.patches();
    NextPatches next =
        PLANNER.next(
            new Trials(Stratum.of(patches.get(0)), patches, false),
            InventedShop.BENCH,
            Requirements.USUAL,
            Site.OFFCUT,
            atHand,
            6);
    assertThat(next.window().orElseThrow().chosen()).isEmpty();
    assertThat(
            next.suggestions().stream()
                .collect(Collectors.groupingBy(s -> s.place().name(), Collectors.counting()))
                .values())
        .allMatch(count -> count <= 3);
  }

  /** 92 mm/s against 91 is nothing that a hand can do. */
  @Test
  void no_two_patches_of_a_list_are_alike_to_a_hand() {
    int compared = 0;
    for (InventedShop shop : List.of(climbed(0.3, 18), climbed(0, 24), climbed(0.6, 12))) {
      List<Suggestion> list =
          next(shop, Site.OFFCUT, 8).suggestions().stream()
              .filter(s -> s.purpose() != Purpose.CONTROL && s.purpose() != Purpose.CONFIRM)
              .toList();
      for (Suggestion a : list) {
        for (Suggestion b : list) {
          if (a.number() < b.number()) {
            compared++;
            assertThat(
                    ratio(a.setting().powerPercent(), b.setting().powerPercent()) > 1.05
                        || ratio(
                                a.setting().speedMillimetresPerSecond(),
                                b.setting().speedMillimetresPerSecond())
                            > 1.05)
                .as("%s against %s", a.setting(), b.setting())
                .isTrue();
          }
        }
      }
    }
    assertThat(compared).isPositive();
  }

  private static double ratio(double a, double b) {
    return Math.max(a, b) / Math.min(a, b);
  }

  /** Everything from 20 J/cm2 up charred at once: the list goes down, a quarter each. */
  @Test
  void where_every_patch_charred_the_list_goes_down_in_distinct_steps() {
    InventedShop shop = InventedShop.draw(-1, 0.1, 9);
    double lowest = Double.POSITIVE_INFINITY;
    for (int k = 0; k < 7; k++) {
      double dose = 90 * Math.pow(1.25, k % 4);
      Patch patch =
          shop.burn(
              InventedShop.BENCH.settings(80, InventedShop.BENCH.speedForDose(80, dose)), k % 3, 4);
      assertThat(patch.readings().get(0).outcome().charred()).isTrue();
      lowest = Math.min(lowest, patch.exposure().doseJoulesPerCm2());
    }
    NextPatches next = next(shop, Site.OFFCUT, 6);
    List<Suggestion> list = next.suggestions();
    assertThat(list).hasSize(6);
    assertThat(list.get(0).setting().doseJoulesPerCm2())
        .isLessThanOrEqualTo(lowest / Math.pow(1.25, 3) + 1e-9);
    for (int k = 1; k < list.size(); k++) {
      assertThat(list.get(k).setting().doseJoulesPerCm2())
          .isLessThanOrEqualTo(list.get(k - 1).setting().doseJoulesPerCm2() / 1.1);
      assertThat(list.get(k).setting().intensity())
          .isLessThanOrEqualTo(list.get(k - 1).setting().intensity() + 1e-9);
      assertThat(list.get(k).onlyAfter()).isEmpty();
    }
    assertThat(PlanText.advice(next.advice()))
        .startsWith("Every patch so far charred, so go down: burn these in this order");
    assertThat(PlanText.motive(list.get(0).motive()))
        .isEqualTo("goes down to what leaves the wood unharmed");
  }

  @Test
  void where_boards_differ_new_ones_are_asked_for_until_there_are_five() {
    InventedShop shop = InventedShop.draw(1.5, 0.7, 6);
    for (int k = 0; k < 18; k++) {
      double dose = 2 * Math.pow(1.25, k % 9);
      shop.burn(
          InventedShop.BENCH.settings(60, InventedShop.BENCH.speedForDose(60, dose)), k % 3, 8);
    }
    NextPatches next = next(shop, Site.OFFCUT, 6);

    assertThat(next.window().orElseThrow().boardsWanted()).isEqualTo(5);
    assertThat(next.suggestions().stream().map(s -> s.place().name()))
        .contains("new board 1", "new board 2")
        .doesNotContain("new board 3");
    assertThat(next(climbed(1, 5), Site.OFFCUT, 3).window().orElseThrow().boardsWanted())
        .isEqualTo(3);
  }

  @Test
  void more_power_is_come_to_by_steps_of_the_ladder() {
    InventedShop shop = climbed(1.2, 12);
    double highest = 40;
    for (Suggestion s : next(shop, Site.OFFCUT, 8).suggestions()) {
      assertThat(s.setting().powerPercent()).isLessThanOrEqualTo(1.25 * highest + 1e-9);
      highest = Math.max(highest, s.setting().powerPercent());
    }
  }

  @Test
  void a_window_that_stands_is_confirmed_on_new_boards() {
    InventedShop shop = climbed(1.6, 24);
    NextPatches next = next(shop, Site.OFFCUT, 4);

    assertThat(next.suggestions())
        .hasSize(4)
        .allMatch(s -> s.purpose() == Purpose.CONFIRM)
        .allMatch(s -> s.charRiskUpper() <= Requirements.USUAL.charRisk());
    assertThat(next.suggestions().stream().map(s -> s.place().name()).distinct()).hasSize(3);
    assertThat(PlanText.advice(next.advice()))
        .contains("It takes 45 in a row without char to support 5 % at 90 % confidence")
        .endsWith("59 at 95 %.");
  }

  @Test
  void a_rig_that_burned_none_of_the_trials_climbs_to_the_start_setting_from_two_rungs_below() {
    RigSetup tern = InventedShop.bench(Pieces.rig(2, "Tern", 200));
    NextPatches next = next(climbed(1.6, 24), tern, Site.OFFCUT, 5);
    double start = next.window().orElseThrow().chosen().orElseThrow().start().doseJoulesPerCm2();
    List<Suggestion> list = next.suggestions();

    assertThat(PlanText.standing(next.standing()))
        .endsWith("on a rig that has burned none of the trials.");
    assertThat(list)
        .extracting(Suggestion::purpose)
        .startsWith(Purpose.CLIMB, Purpose.CLIMB)
        .endsWith(Purpose.CONFIRM);
    assertThat(list.get(0).onlyAfter()).isEmpty();
    double permitted = start / (1.25 * 1.25);
    int climbs = 0;
    for (Suggestion s : list) {
      assertThat(s.setting().doseJoulesPerCm2()).isLessThanOrEqualTo(permitted * (1 + 1e-9));
      if (s.purpose() == Purpose.CLIMB) {
        permitted = 1.25 * s.setting().doseJoulesPerCm2();
        climbs++;
      } else {
        assertThat(s.setting().doseJoulesPerCm2()).isCloseTo(start, within(1e-9));
      }
      if (s.number() > 1) {
        assertThat(s.onlyAfter()).hasValue(s.purpose() == Purpose.CLIMB ? climbs - 1 : climbs);
      }
    }
  }

  @Test
  void a_mistyped_number_of_passes_does_not_keep_the_list_from_coming() {
    InventedShop shop = climbed(1, 6);
    Patch first = shop.patches().get(0);
    List<Reading> readings = new ArrayList<>(first.readings());
    readings.add(Pieces.after(999_999_999, readings.remove(readings.size() - 1)));
    shop.patches().set(0, Pieces.withReadings(first, readings));
    NextPatches next = next(shop, Site.OFFCUT, 2);
    assertThat(PlanText.standing(next.standing()))
        .startsWith("P-0001 had not cleared after 999999999 passes");
    assertThat(next.suggestions()).hasSize(2).allMatch(s -> s.passes() <= Planner.PASSES);
  }

  @Test
  void confirming_patches_may_be_burned_on_the_piece() {
    assertThat(next(climbed(1.6, 24), Site.PIECE, 3).suggestions())
        .hasSize(3)
        .allMatch(s -> s.place().name().equals("hidden spot of the piece"));
  }
}
