package charline.window;

import static org.assertj.core.api.Assertions.assertThat;

import charline.model.ReferenceStrata;
import charline.model.Trials;
import java.time.OffsetDateTime;
import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Strata are judged side by side; what one is told must not depend on its neighbours. */
class ParallelTest {
  private static Recommendation judge(Trials trials) {
    RigSetup bench =
        RigSetup.of(
            RigSetup.mostUsedRig(trials.patches()),
            trials.patches(),
            OffsetDateTime.parse("2026-11-01T12:00:00Z"));
    return WindowFinder.withDefaults().recommend(trials, bench, Requirements.USUAL);
  }

  @Test
  void judging_side_by_side_gives_the_same_digits_as_one_by_one() {
    List<Trials> strata =
        List.of(
            ReferenceStrata.trials("latex", "pine"),
            ReferenceStrata.trials("latex", "oak"),
            ReferenceStrata.trials("varnish", "ash"));
    List<Recommendation> alone = strata.stream().map(ParallelTest::judge).toList();
    List<Recommendation> together =
        Collections.nCopies(4, strata).stream()
            .flatMap(List::stream)
            .collect(Collectors.toList())
            .parallelStream()
            .map(ParallelTest::judge)
            .toList();
    for (int i = 0; i < together.size(); i++) {
      Recommendation one = alone.get(i % strata.size());
      assertThat(together.get(i).chosen()).isEqualTo(one.chosen());
      assertThat(together.get(i).chanceAnyWindow()).isEqualTo(one.chanceAnyWindow());
    }
  }
}
