package charline.shops;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.model.Estimate;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.Posterior;
import charline.model.Trials;
import charline.trial.Patch;
import charline.trial.Stratum;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Where char weighs intensity as these shops have it, the burn-onset model finds that. */
class IntensityWeightPropertyTest {
  private static Estimate found(Scenario scenario, double phi, double moved, int number) {
    Random random = new Random(77 + 1_000_003L * number);
    Truth drawn = Truth.draw(scenario, random);
    Law law = drawn.charring().moved(moved);
    Law weighing =
        new Law(
            law.tau(), phi, law.psi(), law.sigma(), law.omega(), law.noise(), law.lnReference());
    List<Patch> patches =
        Shop.patches(scenario, new Truth(weighing, drawn.clearing(), 0, false), random);
    return Fitter.withDefaults()
        .fit(new Trials(Stratum.of(patches.get(0)), patches, false), Event.CHAR)
        .phi();
  }

  /**
   * Below 0 more fluence at equal dose chars less, as the trade says of pulses against continuous
   * light.
   */
  @ParameterizedTest
  @ValueSource(doubles = {-0.4, 0.5})
  void the_interval_contains_the_truth_as_often_as_it_says(double phi) {
    Scenario scenario = Scenario.usual().burning(24, 4);
    int shops = 30;
    int within =
        (int)
            IntStream.range(0, shops)
                .mapToObj(number -> found(scenario, phi, 0, number))
                .filter(e -> e.low() <= phi && phi <= e.high())
                .count();
    Share kept = new Share(within, shops);
    assertThat(kept.upper()).as("90 %% intervals: %s", kept.words()).isGreaterThanOrEqualTo(0.9);
  }

  /** Two corners bound a box: no draw says that more power at the same speed chars less. */
  @Test
  void in_every_draw_risk_rises_with_power_at_one_speed() {
    List<Patch> patches = Shop.draw(Scenario.usual().burning(6, 3), 1).patches();
    Posterior posterior =
        Fitter.withDefaults()
            .fit(new Trials(Stratum.of(patches.get(0)), patches, false), Event.CHAR)
            .posterior();
    double[] less = posterior.newBoardChance(ShopBench.dose(40, 20), ShopBench.intensity(40), 2);
    double[] more = posterior.newBoardChance(ShopBench.dose(80, 20), ShopBench.intensity(80), 2);
    double[] atOneDose =
        posterior.newBoardChance(ShopBench.dose(40, 20), ShopBench.intensity(80), 2);
    boolean someFall = false;
    for (int i = 0; i < less.length; i++) {
      assertThat(more[i]).isGreaterThanOrEqualTo(less[i]);
      someFall |= atOneDose[i] < less[i];
    }
    assertThat(someFall).as("more intensity at one dose may char less").isTrue();
  }

  /** Few patches leave most of the word to the prior's middle, 0; many that char take it. */
  @Test
  void many_patches_find_that_more_fluence_at_equal_dose_chars_less() {
    Scenario many = Scenario.usual().burning(112, 7);
    double middle =
        IntStream.range(0, 4)
            .mapToDouble(n -> found(many, -0.4, -1, n).median())
            .average()
            .orElseThrow();
    assertThat(middle).isCloseTo(-0.4, within(0.15));
  }
}
