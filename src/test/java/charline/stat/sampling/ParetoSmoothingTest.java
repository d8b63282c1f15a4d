package charline.stat.sampling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ParetoSmoothingTest {
  private static final int SAMPLES = 40;

  /**
   * Weights u^-k have a Pareto tail of shape k exactly (definition of the generalised Pareto,
   * Pickands 1975), so k-hat must find k, but for the pull towards 0.5 of Vehtari et al. (2024).
   * The mean of many samples must lie within three of its own standard errors.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.2, 0.5, 0.7, 1.0, 1.5})
  void k_hat_finds_the_shape_of_a_known_tail(double k) {
    int draws = 100_000;
    int tail = (int) Math.ceil(3 * Math.sqrt(draws));
    double pulled = (tail * k + 5) / (tail + 10);
    double[] found = new double[SAMPLES];
    for (int s = 0; s < SAMPLES; s++) {
      double[] logWeights = new Random(42 + s).doubles(draws).map(u -> -k * Math.log(u)).toArray();
      found[s] = ParetoSmoothing.of(logWeights).kHat();
    }
    double mean = Arrays.stream(found).average().orElseThrow();
    double variance = Arrays.stream(found).map(f -> (f - mean) * (f - mean)).sum() / (SAMPLES - 1);
    assertThat(mean).isCloseTo(pulled, within(3 * Math.sqrt(variance / SAMPLES)));
  }

  @Test
  void weights_add_up_to_one_and_keep_their_order() {
    Random random = new Random(7);
    double[] logWeights = random.doubles(5000).map(u -> -0.8 * Math.log(u)).toArray();
    double[] smoothed = ParetoSmoothing.of(logWeights).weights();
    assertThat(Arrays.stream(smoothed).sum()).isCloseTo(1, within(1e-12));
    for (int i = 1; i < smoothed.length; i++) {
      if (logWeights[i] > logWeights[i - 1]) {
        assertThat(smoothed[i]).isGreaterThanOrEqualTo(smoothed[i - 1]);
      }
    }
  }

  @Test
  void equal_weights_have_no_tail_at_all() {
    ParetoSmoothing smoothing = ParetoSmoothing.of(new double[1000]);
    assertThat(smoothing.kHat()).isEqualTo(Double.NEGATIVE_INFINITY);
    assertThat(smoothing.weights()).containsOnly(0.001);
  }

  @Test
  void one_weight_that_takes_all_is_a_failure() {
    double[] logWeights = new double[1000];
    Arrays.fill(logWeights, Double.NEGATIVE_INFINITY);
    logWeights[3] = 0;
    assertThat(ParetoSmoothing.of(logWeights).kHat()).isEqualTo(Double.POSITIVE_INFINITY);
  }

  @Test
  void weights_of_nothing_are_refused() {
    double[] logWeights = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
    assertThatThrownBy(() -> ParetoSmoothing.of(logWeights))
        .hasMessage(
            "At least one weight must be above zero and all finite; the largest log weight is"
                + " -Infinity.");
  }
}
