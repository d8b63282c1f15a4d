package charline.shops;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.model.Trials;
import charline.trial.Stratum;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Simulated shops are what they say they are. */
class ShopPropertyTest {
  @ParameterizedTest
  @EnumSource(Noise.class)
  void noise_has_median_0_and_the_logistic_spread(Noise noise) {
    int n = 20_000;
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < n; i++) {
      double e = noise.quantile((i + 0.5) / n);
      sum += e / n;
      squares += e * e / n;
      assertThat(noise.cdf(e)).isCloseTo((i + 0.5) / n, within(1e-9));
    }
    assertThat(noise.cdf(0)).isCloseTo(0.5, within(1e-12));
    assertThat(Math.sqrt(squares - sum * sum)).isCloseTo(Math.PI / Math.sqrt(3), within(0.005));
  }

  @ParameterizedTest
  @EnumSource(Noise.class)
  void a_pinned_law_has_its_chance_where_it_was_pinned(Noise noise) {
    Law law = Law.pinned(2, 0.05, 0.5, 0.6, 0.2, 0, noise, Math.log(1.5));
    assertThat(law.newBoardChance(Math.exp(2), 1.5, 2)).isCloseTo(0.05, within(1e-12));
  }

  @Test
  void the_true_chance_is_the_share_of_patches_drawn() {
    Law law = Law.pinned(2, 0.4, 0.5, 0.6, 0.25, 0.3, Noise.GUMBEL_EARLY, 0);
    Random random = new Random(8);
    int n = 100_000;
    int met = 0;
    for (int i = 0; i < n; i++) {
      double e = law.noise().quantile(random.nextDouble());
      met += law.firstPass(1.8, 0.2, random.nextGaussian(), e) <= 3 ? 1 : 0;
    }
    // Four standard errors of a share of 100,000.
    assertThat((double) met / n)
        .isCloseTo(law.newBoardChance(Math.exp(1.8), Math.exp(0.2), 3), within(0.0065));
  }

  @Test
  void the_same_number_draws_the_same_shop_and_another_another() {
    Scenario usual = Scenario.usual();
    assertThat(Shop.draw(usual, 3)).isEqualTo(Shop.draw(usual, 3));
    assertThat(Shop.draw(usual, 3).patches()).isNotEqualTo(Shop.draw(usual, 4).patches());
  }

  @Test
  void a_shop_burns_as_its_scenario_says() {
    for (Scenario scenario : Scenarios.all()) {
      Shop shop = Shop.draw(scenario, 1);
      assertThat(shop.patches()).hasSize(scenario.patches());
      assertThat(shop.patches().stream().map(p -> p.board().id()).distinct())
          .hasSize(scenario.boardCount());
      assertThat(shop.patches()).allMatch(p -> scenario.everyPass() || p.readings().size() == 1);
    }
    assertThat(Scenarios.all().stream().map(Scenario::code)).doesNotHaveDuplicates();
  }

  @Test
  void a_calm_shop_of_many_patches_has_a_classical_window_that_is_a_box() {
    Scenario calm =
        Scenario.usual().withGap(2).withBoardSpread(0.1).burning(112, 4).named("calm", "");
    ClassicalWindow.Box box = ClassicalWindow.largest(trials(Shop.draw(calm, 0))).orElseThrow();
    assertThat(box.hot().percent()).isGreaterThanOrEqualTo(box.cold().percent());
    assertThat(box.hot().dose()).isGreaterThanOrEqualTo(box.cold().dose());
    assertThat(ClassicalWindow.largest(trials(Shop.draw(calm.burning(8, 2), 0)))).isEmpty();
  }

  private static Trials trials(Shop shop) {
    return new Trials(Stratum.of(shop.patches().get(0)), shop.patches(), false);
  }

  @Test
  void heavy_tailed_boards_are_as_spread_as_normal_ones_and_lie_further_out() {
    Truth heavy =
        Truth.draw(
            Scenario.usual().with(new Scenario.Boards(0.3, 0.3, true, false)), new Random(1));
    Random random = new Random(2);
    int n = 200_000;
    double squares = 0;
    int far = 0;
    for (int i = 0; i < n; i++) {
      double shift = heavy.shift(random);
      squares += shift * shift / n;
      far += Math.abs(shift) > 4 ? 1 : 0;
    }
    // The variance of t with three degrees of freedom is met slowly: within a tenth.
    assertThat(squares).isCloseTo(1, within(0.1));
    // 2 P(T3 > 4 sqrt 3) = 0.0061; of a normal 0.00006.
    assertThat((double) far / n).isCloseTo(0.0061, within(0.0008));
  }
}
