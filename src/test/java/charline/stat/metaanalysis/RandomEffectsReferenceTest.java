package charline.stat.metaanalysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Random effects against a worked example and against what is known exactly. */
class RandomEffectsReferenceTest {
  /** Coaching effects in eight schools: Rubin 1981, J. Educ. Stat. 6:377, table 1. */
  private static final double[] EFFECTS = {28, 8, -3, 7, -1, 1, 18, 12};

  private static final double[] ERRORS = {15, 10, 16, 11, 9, 11, 10, 18};
  private static final double[] ALIKE = {1, 1, 1, 1, 1, 1, 1, 1};

  /**
   * With a normal(0, 5) prior of the mean and a half-Cauchy(5) of the spread, the usual form of
   * this example: mean 4.3968 (3.3177), spread 3.5977 (3.2199) by a grid over both that shares no
   * code, up to spread 100.
   */
  @Test
  void eight_schools_agree_with_a_grid_over_mean_and_spread() {
    RandomEffects.Result found =
        new RandomEffects(0, 5, t -> 1 / (1 + t * t / 25), 100).fit(EFFECTS, ERRORS, ALIKE);
    assertThat(found.mean()).isCloseTo(4.3968, within(1e-3));
    assertThat(found.meanSd()).isCloseTo(3.3177, within(1e-3));
    assertThat(found.spread()).isCloseTo(3.5977, within(1e-3));
    assertThat(found.spreadSd()).isCloseTo(3.2199, within(1e-3));
  }

  @Test
  void nothing_seen_leaves_the_prior() {
    RandomEffects.Result found =
        RandomEffects.halfNormal(2, 3, 1.5).fit(new double[0], new double[0], new double[0]);
    assertThat(found.mean()).isCloseTo(2, within(1e-12));
    assertThat(found.meanSd()).isCloseTo(3, within(1e-9));
    // A half-normal's second moment is its scale squared.
    assertThat(found.nextSd()).isCloseTo(Math.sqrt(9 + 2.25), within(1e-3));
  }

  @Test
  void many_sharp_quantities_give_their_own_mean_and_spread() {
    int n = 400;
    double[] y = new double[n];
    double[] s = new double[n];
    double[] c = new double[n];
    for (int i = 0; i < n; i++) {
      y[i] = 10 + (i % 2 == 0 ? 0.5 : -0.5);
      s[i] = 0.01;
      c[i] = 1;
    }
    RandomEffects.Result found = RandomEffects.halfNormal(0, 100, 5).fit(y, s, c);
    assertThat(found.mean()).isCloseTo(10, within(1e-3));
    assertThat(found.spread()).isCloseTo(0.5, within(0.01));
    assertThat(found.nextSd()).isCloseTo(0.5, within(0.01));
  }

  @Test
  void distant_quantities_count_less() {
    double[] y = {0, 1};
    double[] s = {0.1, 0.1};
    RandomEffects model = RandomEffects.halfNormal(0.5, 10, 0.5);
    assertThat(model.fit(y, s, new double[] {1, 2}).mean()).isLessThan(0.4);
    assertThat(model.fit(y, s, new double[] {1, 1}).mean()).isCloseTo(0.5, within(1e-9));
    assertThatThrownBy(() -> model.fit(y, s, new double[] {1}))
        .hasMessage(
            "There must be one standard error and one distance per estimate, not 2 and 1 for 2.");
  }
}
