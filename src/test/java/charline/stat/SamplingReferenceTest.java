package charline.stat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;

/**
 * Both samplers against distributions whose quantiles are known: a correlated normal and the
 * logarithm of a gamma variable, by Commons Math's distribution functions.
 */
class SamplingReferenceTest {
  private static final RealMatrix COVARIANCE =
      MatrixUtils.createRealMatrix(new double[][] {{4, 1.5}, {1.5, 1}});
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
        sampler.sample(target, new double[] {-3, 0}, MatrixUtils.createRealIdentityMatrix(2));
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
                MatrixUtils.createRealMatrix(new double[][] {{0.5}}));
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
        new MarkovChain(4, 400, 1, 9)
            .sample(
                twoModes,
                new double[] {2.5},
                MatrixUtils.createRealMatrix(new double[][] {{0.01}}));
    assertThat(sample.splitRHat()).isGreaterThan(1.02);
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
