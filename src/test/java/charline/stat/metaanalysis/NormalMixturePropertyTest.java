package charline.stat.metaanalysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Mixtures of normals, and normals that are nowhere narrower than them. */
class NormalMixturePropertyTest {
  @Test
  void one_part_is_a_normal() {
    NormalMixture one = new NormalMixture(List.of(new NormalMixture.Part(3, 2, 0.5)));
    // Middle 95 % of a standard normal: within 1.959964 of its mean (any table).
    assertThat(one.within(2, 0.5 * 1.959964)).isCloseTo(0.95, within(1e-7));
    assertThat(one.halfWidth(2, 0.95, 0.5)).isCloseTo(0.5 * 1.959964, within(1e-6));
  }

  @Test
  void two_points_far_apart_share_the_probability() {
    NormalMixture two =
        new NormalMixture(
            List.of(new NormalMixture.Part(1, -4, 0.01), new NormalMixture.Part(3, 4, 0.01)));
    assertThat(two.within(0, 3)).isCloseTo(0, within(1e-12));
    assertThat(two.within(4, 1)).isCloseTo(0.75, within(1e-12));
    assertThat(two.halfWidth(0, 0.5, 4)).isCloseTo(4, within(0.02));
  }

  /** Few quantities leave their spread uncertain, so that the prediction has long tails. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 6, 12})
  void the_covering_normal_claims_no_more_than_the_prediction(int quantities) {
    Random random = new Random(quantities);
    double[] estimates = random.doubles(quantities, -1, 1).toArray();
    double[] errors = random.doubles(quantities, 0.05, 0.6).toArray();
    double[] distances = random.doubles(quantities, 1, 2).toArray();
    RandomEffects.Result found =
        RandomEffects.halfNormal(0, 1.5, 0.75).fit(estimates, errors, distances);
    NormalMixture covering =
        new NormalMixture(List.of(new NormalMixture.Part(1, found.next(), found.coveringSd())));
    for (double share : new double[] {0.5, 0.8, 0.9, 0.95, 0.99}) {
      double half = covering.halfWidth(found.next(), share, found.coveringSd());
      assertThat(found.predictive().within(found.next(), half))
          .as("middle %s", share)
          .isGreaterThan(share - 1e-6);
    }
    assertThat(found.coveringSd()).isBetween(found.nextSd(), 1.6 * found.nextSd());
  }
}
