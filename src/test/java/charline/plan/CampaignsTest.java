package charline.plan;

import static org.assertj.core.api.Assertions.assertThat;

import charline.model.Trials;
import charline.pooling.Pairs;
import charline.shops.Scenario;
import charline.trial.Stratum;
import charline.window.Recommendation;
import charline.window.Requirements;
import charline.window.Verdict;
import charline.window.WindowFinder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A run that was stopped goes on, and medians count shops without a window as the last. */
class CampaignsTest {
  private static final Scenario USUAL = Scenario.usual();
  private static final int FIRST = PlanningStudy.FIRST_SHOP;

  @TempDir Path folder;

  private static Campaign ended(Campaign.End end, int patches) {
    return new Campaign(end, patches, 3, 8 * patches, 2, false, 0.0123, 0.95, 4.5);
  }

  @Test
  void what_was_run_is_there_again_but_for_a_line_that_was_cut_short() throws IOException {
    Campaigns first = Campaigns.in(folder);
    Campaign campaign = ended(Campaign.End.WINDOW, 11);
    first.add(USUAL, FIRST, Manner.NEXT, campaign);
    try (Stream<Path> files = Files.list(folder)) {
      Files.writeString(
          files.findFirst().orElseThrow(),
          "usual,%d,LADDER,WINDOW,18,3,1".formatted(FIRST),
          StandardOpenOption.APPEND);
    }

    Campaigns again = Campaigns.in(folder);

    assertThat(again.of(USUAL, Manner.NEXT, 1)).containsExactly(campaign);
    assertThat(again.has(USUAL, FIRST, Manner.LADDER)).isFalse();
    again.add(USUAL, FIRST, Manner.GRID, campaign);
    assertThat(Campaigns.in(folder).has(USUAL, FIRST, Manner.GRID)).isTrue();
  }

  @Test
  void a_shop_without_a_window_counts_as_more_patches_than_any() {
    List<Campaign> three =
        List.of(
            ended(Campaign.End.WINDOW, 10),
            ended(Campaign.End.NONE, 12),
            ended(Campaign.End.WINDOW, 20));

    assertThat(PlanningReport.quantile(three, 0.5)).isEqualTo(20);
    assertThat(PlanningReport.quantile(three, 0.25)).isEqualTo(15);
    assertThat(PlanningReport.quantile(three, 0.75)).isInfinite();
  }

  /** Every number that people wrote a place for is counted, and every kind and manner has a row. */
  @Test
  void the_report_of_all_campaigns_leaves_no_place_empty() throws IOException {
    Campaigns all = Campaigns.in(folder);
    for (Scenario scenario : PlanningStudy.all()) {
      for (int k = 0; k < PlanningStudy.shops(scenario, 1); k++) {
        for (Manner manner : Manner.values()) {
          all.add(scenario, FIRST + k, manner, ended(Campaign.End.WINDOW, 10 + manner.ordinal()));
        }
      }
    }

    String report = new PlanningReport(all, 1, 2).text();

    assertThat(report)
        .doesNotContain("{", "}")
        .contains("`charline next`: 10, 10 and 10. A plain ladder: 13, 13 and 13.")
        .contains("fewer patches in 6 shops, more in 0 (p 0.031), 3.0 saved on average")
        .contains("| as the planner assumes | borrow | log | 0 | 6 | 0 | 0.031 | -1.0 |");
  }

  @Test
  void a_saving_compares_each_shop_with_itself() {
    Saving saving =
        Saving.of(
            List.of(
                ended(Campaign.End.WINDOW, 10),
                ended(Campaign.End.WINDOW, 14),
                ended(Campaign.End.OPEN, 30)),
            List.of(
                ended(Campaign.End.WINDOW, 13),
                ended(Campaign.End.NONE, 12),
                ended(Campaign.End.OPEN, 30)));

    assertThat(saving.shops()).isEqualTo(new Pairs(2, 0, 1));
    // 3 and 31 - 14 and 0.
    assertThat(saving.meanPatches()).isEqualTo(20 / 3.0);
    assertThat(saving.words())
        .isEqualTo("fewer patches in 2 shops, more in 0 (p 0.50), 6.7 saved on average");
  }

  /** A campaign looks after every patch, and checks the models only where it counts. */
  @Test
  void without_checks_an_answer_is_the_same_where_they_pass() {
    InventedShop shop = InventedShop.draw(USUAL, FIRST);
    for (int n = 0; n < 14; n++) {
      Manner.Choice choice =
          Manner.GRID.choose(Planner.withDefaults(), shop, Optional.empty(), FIRST);
      shop.burn(choice.settings(), choice.board(), Planner.PASSES);
    }
    Trials trials = new Trials(Stratum.of(shop.patches().get(0)), shop.patches(), false);
    WindowFinder finder = WindowFinder.withDefaults();
    Recommendation full = finder.recommend(trials, InventedShop.BENCH, Requirements.USUAL);

    assertThat(full.verdict()).isNotEqualTo(Verdict.UNRELIABLE);
    Recommendation unchecked =
        finder.recommend(
            Unchecked.models(finder.fitter(), trials), InventedShop.BENCH, Requirements.USUAL);
    assertThat(unchecked.verdict()).isEqualTo(full.verdict());
    assertThat(unchecked.reasons()).isEqualTo(full.reasons());
    assertThat(unchecked.standing()).isEqualTo(full.standing());
    assertThat(unchecked.chosen()).isEqualTo(full.chosen());
    assertThat(unchecked.alternatives()).isEqualTo(full.alternatives());
    assertThat(unchecked.chanceAnyWindow()).isEqualTo(full.chanceAnyWindow());
  }

  @Test
  void the_same_shop_burns_the_same_campaign() {
    Scenario wide = USUAL.withGap(2).named("wide-gap", "");
    Campaign once = Campaign.run(wide, FIRST, Manner.GRID);
    Campaign twice = Campaign.run(wide, FIRST, Manner.GRID);

    assertThat(once).usingRecursiveComparison().ignoringFields("seconds").isEqualTo(twice);
    assertThat(once.found()).isTrue();
    assertThat(once.offLadder()).isFalse();
  }

  @Test
  void a_run_that_is_cut_short_has_something_of_every_scenario() {
    assertThat(
            IntStream.of(1, 2, 3)
                .map(few -> PlanningStudy.shops(PlanningStudy.goal().get(0), few))
                .toArray())
        .containsExactly(2, 4, 6);
    assertThat(PlanningStudy.shops(PlanningStudy.others().get(0), 3)).isEqualTo(3);
    assertThat(PlanningStudy.all().stream().map(Scenario::code)).doesNotHaveDuplicates();
    assertThat(PlanningStudy.others()).hasSize(8);
  }
}
