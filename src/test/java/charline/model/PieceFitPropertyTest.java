package charline.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import charline.shops.Scenario;
import charline.shops.Shop;
import charline.shops.ShopBench;
import charline.trial.Patch;
import charline.trial.Stratum;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Weighing the other boards' draws by a piece's patches is a fit to all patches, seen from it. */
class PieceFitPropertyTest {
  private static final Fitter FITTER = Fitter.withDefaults();

  @ParameterizedTest
  @EnumSource(Event.class)
  void weighing_agrees_with_a_fit_to_all_patches(Event event) {
    for (int number = 1; number <= 3; number++) {
      Trials trials = trials(Scenario.usual().withBoardSpread(0.3), number);
      UUID piece = trials.patches().get(2).board().id();
      List<Patch> own =
          trials.patches().stream().filter(p -> p.board().id().equals(piece)).toList();
      PieceFit fit = PieceFit.of(FITTER, trials, event, piece);
      Posterior.OnPiece whole =
          FITTER
              .fit(trials, event)
              .posterior()
              .givenShiftOf(
                  trials.censored(event, own::contains), trials.waySteps(event, own::contains));

      assertThat(fit.refitted()).isFalse();
      assertThat(fit.patches()).isEqualTo(6);
      // 8,192 draws on either side, some of them of little weight.
      assertThat(fit.shift().median()).isCloseTo(whole.shift().median(), within(0.02));
      for (double hand : new double[] {12, 20, 33}) {
        double dose = ShopBench.dose(60, hand);
        assertThat(mean(fit.piece().posterior(), dose))
            .as("shop %d, hand %s mm/s", number, hand)
            .isCloseTo(mean(whole.posterior(), dose), within(0.015));
      }
    }
  }

  @Test
  void patches_that_nobody_would_have_expected_lead_to_a_fit_of_all() {
    Trials trials = trials(Scenario.usual().withBoardSpread(0.02), 5);
    UUID piece = UUID.fromString("00000000-0000-0004-0000-000000000002");
    // The piece as if it were another wood: every one of its patches charred on the first pass.
    List<Patch> unlike =
        trials.patches().stream()
            .map(
                p ->
                    p.board().id().equals(piece)
                        ? p.withReadings(
                            ShopBench.readings(
                                99, List.of(new ShopBench.Seen(1, true, false)), ShopBench.DAY))
                        : p)
            .toList();
    PieceFit fit =
        PieceFit.of(FITTER, new Trials(trials.stratum(), unlike, false), Event.CHAR, piece);

    assertThat(fit.kHat()).isGreaterThan(ModelFit.PARETO_K_LIMIT);
    assertThat(fit.refitted()).isTrue();
    assertThat(fit.shift().high()).isNegative();
  }

  /** Means would still be right at such a k-hat; bounds are not. */
  @Test
  void a_weighting_that_few_draws_carry_is_not_trusted_with_a_bound() {
    Trials trials = trials(Scenario.usual().withBoardSpread(0.5), 6);
    PieceFit fit = PieceFit.of(FITTER, trials, Event.CHAR, trials.patches().get(0).board().id());

    assertThat(fit.kHat()).isBetween(PieceFit.LARGEST_K_HAT, ModelFit.PARETO_K_LIMIT);
    assertThat(fit.refitted()).isTrue();
  }

  @Test
  void a_piece_without_patches_is_a_new_board() {
    Trials trials = trials(Scenario.usual(), 1);
    assertThatThrownBy(() -> PieceFit.of(FITTER, trials, Event.CHAR, new UUID(9, 9)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("patch of its own");
  }

  private static double mean(Posterior posterior, double dose) {
    return posterior.mean(posterior.newBoardChance(dose, ShopBench.intensity(60), 2));
  }

  private static Trials trials(Scenario scenario, int number) {
    List<Patch> patches = Shop.draw(scenario, number).patches();
    return new Trials(Stratum.of(patches.get(0)), patches, false);
  }
}
