package charline.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.shops.Scenario;
import charline.shops.Shop;
import charline.trial.Patch;
import charline.trial.Stratum;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Large strata, fitted with the draws they need and with all. */
class SampleSizePropertyTest {
  /** A dose is read off a dial in whole percents. */
  private static final double TOO_SMALL_TO_DIAL = 0.005;

  @ParameterizedTest
  @CsvSource({
    "24, 3, 8192",
    "255, 30, 8192",
    "256, 13, 4096",
    "512, 26, 2048",
    "1250, 63, 1024",
    "1250, 5, 8192",
    "90000, 5000, 1024"
  })
  void the_more_patches_and_boards_the_fewer_draws(int patches, int boards, int draws) {
    assertThat(SampleSize.of(patches, boards).draws(8192)).isEqualTo(draws);
  }

  @ParameterizedTest
  @CsvSource({
    "260, 13, 4096, CHAR",
    "260, 13, 4096, CLEARING",
    "520, 26, 2048, CHAR",
    "520, 26, 2048, CLEARING",
    "1030, 52, 1024, CHAR",
    "1030, 52, 1024, CLEARING",
    "2100, 105, 1024, CHAR",
    "2100, 105, 1024, CLEARING"
  })
  void a_large_stratum_is_answered_alike_by_few_draws_and_by_all(
      int patches, int boards, int draws, Event event) {
    Trials trials = trials(patches, boards);
    Fitter fitter = Fitter.withDefaults();
    ModelFit few = fitter.fit(trials, event);
    ModelFit all = fitter.fit(trials, trials.censored(event), event, new SampleSize(1));

    assertThat(few.posterior().size()).isEqualTo(draws);
    assertThat(all.posterior().size()).isEqualTo(8192);
    double chance = event == Event.CHAR ? 0.05 : 0.9;
    for (int passes : new int[] {1, 2, 6}) {
      for (double confidence : List.of(0.5, 0.9, 0.95)) {
        assertThat(few.lnPromisedDose(chance, confidence, 0, passes))
            .as("%s at %s, %d passes", event, confidence, passes)
            .isCloseTo(
                all.lnPromisedDose(chance, confidence, 0, passes), within(TOO_SMALL_TO_DIAL));
      }
    }
  }

  @Test
  void a_usual_stratum_keeps_all_draws() {
    assertThat(Fitter.withDefaults().fit(trials(60, 4), Event.CHAR).posterior().size())
        .isEqualTo(8192);
  }

  private static Trials trials(int patches, int boards) {
    List<Patch> burned = Shop.draw(Scenario.usual().burning(patches, boards), 1).patches();
    return new Trials(Stratum.of(burned.get(0)), burned, false);
  }
}
