package charline.stat.sampling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.linear.MatrixUtils;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Both samplers against distributions whose quantiles are known: a correlated normal and the
 * logarithm of a gamma variable, by Commons Math's distribution functions.
 */
class SamplingReferenceTest {
  private static final double[][] COVARIANCE = {{4, 1.5}, {1.5, 1}};
  private static final double[] MEAN = {3, -2};

  private static double logNormalDensity(double[] x) {
    double a = x[0] - MEAN[0];
    double b = x[1] - MEAN[1];
    double determinant = 4 - 1.5 * 1.5;
    return -(a * a - 3 * a * b + 4 * b * b) / (2 * determinant);
  }

  /** ln X for X gamma with shape 2: density e^(2x - e^x), skewed to the left. */
  private static double logLogGammaDensity(double[] x) {
    return 2 * x[0] - Math.exp(x[0]);
  }

  @Test
  void importance_sampling_finds_the_quantiles_of_a_correlated_normal() {
    ImportanceSampler.Sample sample =
        new ImportanceSampler(8192, 2, 1.2, 1)
            .sample(SamplingReferenceTest::logNormalDensity, new double[] {2.5, -2.2}, COVARIANCE);
    assertThat(sample.kHat()).isLessThan(0.5);
    quantilesAre(sample.draws(), 0, 3, 2, 0.03);
    quantilesAre(sample.draws(), 1, -2, 1, 0.03);
  }

  @Test
  void moving_the_proposal_helps_when_it_began_far_off() {
    ToDoubleFunction<double[]> target = SamplingReferenceTest::logNormalDensity;
    ImportanceSampler sampler = new ImportanceSampler(8192, 2, 1.2, 1);
    ImportanceSampler.Sample first =
        sampler.sample(
            target, new double[] {-3, 0}, MatrixUtils.createRealIdentityMatrix(2).getData());
    ImportanceSampler.Sample moved = sampler.resample(target, first);
    assertThat(moved.kHat()).isLessThan(first.kHat()).isLessThan(0.5);
    assertThat(moved.draws().effectiveSize()).isGreaterThan(3 * first.draws().effectiveSize());
    quantilesAre(moved.draws(), 0, 3, 2, 0.03);
  }

  @Test
  void importance_sampling_finds_the_quantiles_of_a_skewed_density() {
    ImportanceSampler.Sample sample =
        new ImportanceSampler(8192, 2, 1.3, 5)
            .sample(
                SamplingReferenceTest::logLogGammaDensity,
                new double[] {Math.log(2)},
                new double[][] {{0.5}});
    GammaDistribution gamma = new GammaDistribution(2, 1);
    for (double p : new double[] {0.05, 0.5, 0.95}) {
      assertThat(WeightedDraws.quantile(sample.draws().column(0), sample.draws().weights(), p))
          .isCloseTo(Math.log(gamma.inverseCumulativeProbability(p)), within(0.03));
    }
  }

  @Test
  void markov_chains_find_the_same_normal() {
    MarkovChain.Sample sample =
        new MarkovChain(4, 8000, 8, 3)
            .sample(SamplingReferenceTest::logNormalDensity, new double[] {3, -2}, COVARIANCE);
    assertThat(sample.splitRHat()).isLessThan(1.02);
    quantilesAre(sample.draws(), 0, 3, 2, 0.06);
    quantilesAre(sample.draws(), 1, -2, 1, 0.06);
  }

  @Test
  void chains_that_have_not_met_are_told_apart() {
    // Two far modes: each chain stays where it falls, so the halves disagree.
    ToDoubleFunction<double[]> twoModes =
        x -> Math.log(Math.exp(-50 * (x[0] - 5) * (x[0] - 5)) + Math.exp(-50 * x[0] * x[0]));
    MarkovChain.Sample sample =
        new MarkovChain(4, 400, 1, 9).sample(twoModes, new double[] {2.5}, new double[][] {{0.01}});
    assertThat(sample.splitRHat()).isGreaterThan(1.02);
  }

  /**
   * Two humps as heavy as each other, so far apart along the first of seven variables that hardly a
   * step leads over; the chains are told where one of them is. Only a chain that starts beyond the
   * middle knows of the other, and about one in ten does, so many chains are run.
   */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void chains_from_one_of_two_humps_do_not_agree_on_it_alone(long seed) {
    int n = 7;
    double apart = 5;
    double sd = 0.3;
    ToDoubleFunction<double[]> humps =
        x -> {
          double others = 0;
          for (int k = 1; k < n; k++) {
            others -= x[k] * x[k] / 2;
          }
          double near = x[0] / sd;
          double far = (x[0] - apart) / sd;
          return others + lnSum(-near * near / 2, -far * far / 2);
        };
    MarkovChain.Sample sample =
        new MarkovChain(32, 512, 8, seed)
            .sample(humps, new double[n], MatrixUtils.createRealIdentityMatrix(n).getData());
    double beyond =
        Arrays.stream(sample.draws().column(0)).filter(x -> x > apart / 2).count()
            / (double) sample.draws().size();
    assertThat(sample.splitRHat() > 1.02 || Math.abs(beyond - 0.5) < 0.1)
        .as("split R-hat %s, beyond the middle %s", sample.splitRHat(), beyond)
        .isTrue();
  }

  /** With no steps taken, what is kept is where the chains began. */
  @Test
  void chains_start_twice_as_far_apart_as_the_target_is_thought_to_spread() {
    double[] start = {3, -2};
    WeightedDraws starts =
        new MarkovChain(4000, 2, 0, 21)
            .sample(SamplingReferenceTest::logNormalDensity, start, COVARIANCE)
            .draws();
    double[][] spread = ImportanceSampler.covariance(starts, start);
    for (int r = 0; r < 2; r++) {
      for (int c = 0; c < 2; c++) {
        assertThat(spread[r][c])
            .isCloseTo(4 * COVARIANCE[r][c], within(0.05 * 4 * COVARIANCE[r][c]));
      }
    }
  }

  @Test
  void chains_start_where_the_target_is() {
    double[] start = {0.1};
    double[][] wide = new double[][] {{1}};
    double[] starts =
        new MarkovChain(500, 2, 0, 22)
            .sample(x -> x[0] > 0 ? -x[0] : Double.NEGATIVE_INFINITY, start, wide)
            .draws()
            .column(0);
    assertThat(Arrays.stream(starts).min().orElseThrow()).isPositive();
    assertThat(Arrays.stream(starts).distinct().count()).isEqualTo(500);
    assertThat(
            new MarkovChain(4, 2, 0, 22)
                .sample(x -> x[0] == 0.1 ? 0 : Double.NaN, start, wide)
                .draws()
                .column(0))
        .containsOnly(0.1);
  }

  private static double lnSum(double a, double b) {
    return Math.max(a, b) + Math.log1p(Math.exp(-Math.abs(a - b)));
  }

  @Test
  void chains_of_the_same_seed_are_the_same() {
    MarkovChain chains = new MarkovChain(4, 50, 2, 6);
    ToDoubleFunction<double[]> target = SamplingReferenceTest::logNormalDensity;
    double[][] one = chains.sample(target, MEAN, COVARIANCE).draws().points();
    assertThat(chains.sample(target, MEAN, COVARIANCE).draws().points()).isDeepEqualTo(one);
    assertThat(MEAN).containsExactly(3, -2);
  }

  @Test
  void the_same_seed_gives_the_same_digits() {
    ImportanceSampler sampler = new ImportanceSampler(1024, 2, 1.2, 11);
    double[][] one =
        sampler.sample(SamplingReferenceTest::logNormalDensity, MEAN, COVARIANCE).draws().points();
    double[][] two =
        new ImportanceSampler(1024, 2, 1.2, 11)
            .sample(SamplingReferenceTest::logNormalDensity, MEAN, COVARIANCE)
            .draws()
            .points();
    assertThat(two).isDeepEqualTo(one);
    double[][] other =
        new ImportanceSampler(1024, 2, 1.2, 12)
            .sample(SamplingReferenceTest::logNormalDensity, MEAN, COVARIANCE)
            .draws()
            .points();
    assertThat(other[0][0]).isNotEqualTo(one[0][0]);
  }

  private static void quantilesAre(
      WeightedDraws draws, int variable, double mean, double sd, double tolerance) {
    NormalDistribution normal = new NormalDistribution(mean, sd);
    for (double p : new double[] {0.05, 0.25, 0.5, 0.75, 0.95}) {
      assertThat(WeightedDraws.quantile(draws.column(variable), draws.weights(), p))
          .as("quantile " + p)
          .isCloseTo(normal.inverseCumulativeProbability(p), within(tolerance * sd));
    }
  }
}
