package charline.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.exposure.Emission;
import charline.stat.distribution.Logistic;
import charline.stat.sampling.WeightedDraws;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Areas of strokes side by side, a share of which gets its passes twice. */
class SeamPropertyTest {
  private static final double TAU = Math.log(30);
  private static final double PSI = 0.5;
  private static final double SIGMA = 0.25;
  private static final int BOARDS = 20_000;

  /**
   * By hand: half the even-chance dose is ln 2 / 0.25 = 4 ln 2 below it, odds 1/16, so 1/17 chars.
   * Twice the passes add 0.5 ln 2, odds 1/4, so 1/5. A tenth of the area being seam, 1 -
   * (16/17)^0.9 x (4/5)^0.1 = 0.07400.
   */
  @Test
  void a_tenth_of_seams_is_as_worked_by_hand() {
    Posterior alike = oneDraw(1e-9);

    assertThat(alike.newBoardChance(15, 1, 1, 0.1)[0]).isCloseTo(0.07400, within(5e-6));
    assertThat(alike.newBoardChance(15, 1, 1)[0]).isCloseTo(1.0 / 17, within(1e-9));
    assertThat(alike.newBoardChance(15, 1, 1, 1)[0]).isCloseTo(1.0 / 5, within(1e-9));
  }

  @Test
  void without_seams_nothing_changes_and_with_nothing_but_seams_the_passes_are_twice_as_many() {
    Posterior fitted =
        Fitter.withDefaults().fit(ReferenceStrata.trials("latex", "pine"), Event.CHAR).posterior();

    assertThat(fitted.newBoardChance(9, 1.2, 2, 0)).isEqualTo(fitted.newBoardChance(9, 1.2, 2));
    assertThat(fitted.doseLimit(0.05, 0).lnDose(0.1, 0, 2))
        .isEqualTo(fitted.doseLimit(0.05).lnDose(0.1, 0, 2));
    assertThat(fitted.newBoardChance(9, 1.2, 2, 1))
        .containsExactly(fitted.newBoardChance(9, 1.2, 4), within(1e-12));
    assertThat(fitted.doseLimit(0.05, 1).lnDose(0.1, 0, 2))
        .isCloseTo(fitted.doseLimit(0.05).lnDose(0.1, 0, 4), within(1e-6));
  }

  @Test
  void more_seams_char_more_and_never_take_less_than_the_singles_or_more_than_the_doubles() {
    Random random = new Random(2026);
    for (int k = 0; k < 200; k++) {
      Posterior draw = oneDraw(0.5 * random.nextDouble());
      double dose = 30 * Math.exp(3 * (random.nextDouble() - 0.5));
      int passes = 1 + random.nextInt(6);
      double before = draw.newBoardChance(dose, 1, passes)[0];
      for (double share = 0.05; share <= 1; share += 0.05) {
        double now = draw.newBoardChance(dose, 1, passes, share)[0];
        assertThat(now).as("share %s", share).isGreaterThanOrEqualTo(before);
        before = now;
      }
      assertThat(before).isLessThanOrEqualTo(draw.newBoardChance(dose, 1, 2 * passes)[0] + 1e-12);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {1e-6, 0.001, 0.05, 0.2, 0.5, 1, 32})
  void the_chance_is_the_mean_over_boards_of_what_each_board_does(double omega) {
    for (double share : new double[] {0.05, 1.0 / 9, 0.5, 1}) {
      for (int k = -12; k <= 12; k++) {
        double margin = (SIGMA + omega) * k / 4;
        assertThat(oneDraw(omega).newBoardChance(30 * Math.exp(margin), 1, 1, share)[0])
            .as("boards %s, share %s, margin %s", omega, share, margin)
            .isCloseTo(overBoards(omega, margin, share), within(omega > 10 ? 1e-2 : 1e-4));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {1e-6, 0.05, 0.2, 0.5, 32})
  void at_a_dose_limit_the_area_has_just_the_asked_chance(double omega) {
    for (double asked : new double[] {1e-6, 2.6e-4, 0.01, 0.05, 0.3}) {
      double dose = Math.exp(oneDraw(omega).doseLimit(asked, 0.1).lnDose(0.5, 0, 3));

      assertThat(oneDraw(omega).newBoardChance(dose, 1, 3, 0.1)[0])
          .isCloseTo(asked, within(asked / 1000));
    }
  }

  /**
   * Where patches hardly differ, twice the passes are certain to char long before the passes are.
   */
  @Test
  void a_dose_limit_is_found_where_patches_hardly_differ() {
    for (double sigma : new double[] {1e-6, 1e-4, 5e-4, 1e-3, 0.01}) {
      Posterior steep = oneDraw(1e-3, sigma);
      double dose = Math.exp(steep.doseLimit(0.05, 1.0 / 9).lnDose(0.5, 0, 1));

      assertThat(steep.newBoardChance(dose, 1, 1, 1.0 / 9)[0]).isCloseTo(0.05, within(1e-3));
      assertThat(dose).isCloseTo(30 / Math.sqrt(2), within(1.0));
    }
  }

  /** Boards that differ much more than patches, and passes that count much: nothing overflows. */
  @Test
  void a_dose_limit_is_found_where_boards_differ_and_patches_hardly_do() {
    for (double sigma : new double[] {8e-4, 1.6e-3, 1.8e-3, 3e-3}) {
      for (double psi : new double[] {0.5, 1.0, 1.36}) {
        Posterior steep = oneDraw(0.13, sigma, psi);
        double dose = Math.exp(steep.doseLimit(0.05, 1.0 / 9).lnDose(0.5, 0, 1));

        assertThat(steep.newBoardChance(dose, 1, 1, 1.0 / 9)[0])
            .as("sigma %s, psi %s", sigma, psi)
            .isCloseTo(0.05, within(2e-3));
      }
    }
  }

  /** Draws far out in the prior's tails, such as a fit to few patches has. */
  @Test
  void a_dose_limit_is_found_for_every_draw_that_a_prior_may_make() {
    Random random = new Random(4);
    for (int k = 0; k < 2000; k++) {
      double sigma = Math.exp(Math.log(1e-4) + random.nextDouble() * Math.log(1e7));
      double omega = Math.exp(Math.log(1e-6) + random.nextDouble() * Math.log(3e7));
      double share = random.nextDouble();
      Posterior draw = oneDraw(omega, sigma);
      double lnDose = draw.doseLimit(0.05, share).lnDose(0.5, 0, 1);

      if (Math.abs(lnDose) < 700) {
        assertThat(draw.newBoardChance(Math.exp(lnDose), 1, 1, share)[0])
            .as("sigma %s, omega %s, share %s", sigma, omega, share)
            .isCloseTo(0.05, within(0.02));
      }
    }
  }

  private static Posterior oneDraw(double omega) {
    return oneDraw(omega, SIGMA);
  }

  private static Posterior oneDraw(double omega, double sigma) {
    return oneDraw(omega, sigma, PSI);
  }

  private static Posterior oneDraw(double omega, double sigma, double psi) {
    double[] draw = {
      TAU,
      new Softplus(0.15).coordinate(0.4),
      new Softplus(0.15).coordinate(psi),
      Math.log(sigma),
      new Softplus(0.05).coordinate(omega),
    };
    return new Posterior(
        new WeightedDraws(new double[][] {draw}, new double[] {1}),
        0,
        Prior.usual(Event.CLEARING, Emission.PULSED),
        new double[0]);
  }

  private static double overBoards(double omega, double margin, double share) {
    double sum = 0;
    double total = 0;
    for (int b = 0; b < BOARDS; b++) {
      double shift = 9 * ((2 * b + 1.0) / BOARDS - 1);
      double weight = Math.exp(-shift * shift / 2);
      double z = (margin - omega * shift) / SIGMA;
      double once = Logistic.cdf(z);
      double twice = Logistic.cdf(z + PSI * Math.log(2) / SIGMA);
      sum += weight * (1 - Math.pow(1 - once, 1 - share) * Math.pow(1 - twice, share));
      total += weight;
    }
    return sum / total;
  }
}
