package charline.plan;

import static org.assertj.core.api.Assertions.assertThat;

import charline.shops.Scenario;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
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
        .containsExactly(4, 8, 12);
    assertThat(PlanningStudy.shops(PlanningStudy.others().get(0), 3)).isEqualTo(3);
    assertThat(PlanningStudy.all().stream().map(Scenario::code)).doesNotHaveDuplicates();
    assertThat(PlanningStudy.others()).hasSize(11);
  }
}
