package charline.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.exposure.Emission;
import charline.stat.distribution.Logistic;
import charline.stat.sampling.WeightedDraws;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The chance on a new board against a sum over 20,000 boards, also where patches hardly differ. */
class NewBoardChancePropertyTest {
  private static final double SIGMA = 0.02;
  private static final int BOARDS = 20_000;

  @ParameterizedTest
  @ValueSource(doubles = {0.1, 1, 2, 3, 5, 8, 13, 40, 200})
  void a_chance_is_the_mean_over_boards(double unlikeness) {
    Posterior posterior = oneDraw(unlikeness);
    double reach = 3 * SIGMA * (1 + unlikeness);
    for (int k = -15; k <= 15; k++) {
      double lnDose = reach * k / 15;

      assertThat(posterior.newBoardChance(Math.exp(lnDose), 1, 1)[0])
          .as("boards %s times as unlike as patches, ln dose %s", unlikeness, lnDose)
          .isCloseTo(overBoards(unlikeness, lnDose), within(1e-4 * grain(unlikeness)));
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.1, 1, 2, 3, 5, 8, 13, 40, 200})
  void at_a_dose_limit_the_mean_over_boards_is_what_was_asked(double unlikeness) {
    for (double asked : new double[] {0.001, 0.005, 0.01, 0.03, 0.05, 0.1, 0.15, 0.3, 0.9, 0.97}) {
      double lnDose = oneDraw(unlikeness).doseLimit(asked).lnDose(0.5, 0, 1);

      assertThat(overBoards(unlikeness, lnDose))
          .as("boards %s times as unlike as patches", unlikeness)
          .isCloseTo(asked, within(0.002 * grain(unlikeness) * Math.min(asked, 1 - asked)));
    }
  }

  /** The finest rule is reached at some 100 times, and is let off with more beyond. */
  private static double grain(double unlikeness) {
    return unlikeness > 100 ? 10 : 1;
  }

  /** One draw with an even-chance dose of 1 J/cm2, so that ln dose is the margin. */
  private static Posterior oneDraw(double unlikeness) {
    double omega = unlikeness * SIGMA;
    double[] draw = {
      0, 0, 0, Math.log(SIGMA), new Softplus(0.05).coordinate(omega),
    };
    return new Posterior(
        new WeightedDraws(new double[][] {draw}, new double[] {1}),
        0,
        Prior.usual(Event.CHAR, Emission.PULSED),
        new double[0]);
  }

  private static double overBoards(double unlikeness, double margin) {
    double sum = 0;
    double total = 0;
    for (int b = 0; b < BOARDS; b++) {
      double shift = 9 * ((2 * b + 1.0) / BOARDS - 1);
      double weight = Math.exp(-shift * shift / 2);
      sum += weight * Logistic.cdf(margin / SIGMA - unlikeness * shift);
      total += weight;
    }
    return sum / total;
  }
}
