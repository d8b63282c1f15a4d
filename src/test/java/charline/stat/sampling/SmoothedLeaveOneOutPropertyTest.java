package charline.stat.sampling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/** A normal mean with known spread and a flat prior, where leaving one out has a closed form. */
class SmoothedLeaveOneOutPropertyTest {
  private static final int DRAWS = 4000;

  private static double[] sample(int n, long seed) {
    Random random = new Random(seed);
    return random.doubles(n).map(u -> 3 + random.nextGaussian()).toArray();
  }

  /** ln p(y | μ) for equally likely draws μ of the posterior Normal(mean, 1 / n). */
  private static double[] logLikelihood(double[] y, int i) {
    double mean = Arrays.stream(y).average().orElseThrow();
    NormalDistribution posterior = new NormalDistribution(null, mean, Math.sqrt(1.0 / y.length));
    double[] log = new double[DRAWS];
    for (int s = 0; s < DRAWS; s++) {
      double mu = posterior.inverseCumulativeProbability((s + 0.5) / DRAWS);
      log[s] = -Math.pow(y[i] - mu, 2) / 2 - Math.log(2 * Math.PI) / 2;
    }
    return log;
  }

  /** Without y the posterior is Normal(mean of the others, 1 / (n - 1)). */
  private static double exact(double[] y, int i) {
    int others = y.length - 1;
    double mean = (Arrays.stream(y).sum() - y[i]) / others;
    return new NormalDistribution(null, mean, Math.sqrt(1 + 1.0 / others)).logDensity(y[i]);
  }

  @Test
  void the_density_left_out_is_the_closed_form() {
    double[] y = sample(20, 1);
    for (int i = 0; i < y.length; i++) {
      SmoothedLeaveOneOut left = SmoothedLeaveOneOut.of(logLikelihood(y, i));
      assertThat(left.kHat()).isLessThan(0.7);
      assertThat(left.logDensity()).as("observation " + i).isCloseTo(exact(y, i), within(0.01));
    }
  }

  @Test
  void an_observation_far_from_the_rest_is_told_by_its_k_hat() {
    double[] y = sample(8, 2);
    y[5] += 12;
    assertThat(SmoothedLeaveOneOut.of(logLikelihood(y, 5)).kHat()).isGreaterThan(0.7);
    assertThat(SmoothedLeaveOneOut.of(logLikelihood(y, 2)).kHat()).isLessThan(0.7);
  }

  @Test
  void an_observation_that_says_nothing_leaves_the_draws_as_they_are() {
    double[] same = new double[100];
    Arrays.fill(same, -0.5);
    SmoothedLeaveOneOut left = SmoothedLeaveOneOut.of(same);
    assertThat(left.logDensity()).isCloseTo(-0.5, within(1e-12));
    assertThat(left.weights()).containsOnly(new double[] {0.01}, within(1e-12));
  }
}
