package charline.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every prior of the spread between boards is a density, with the derivatives that it says. */
class SpreadPriorPropertyTest {
  static Stream<SpreadPrior> priors() {
    return Stream.of(
        new HalfNormalSpread(0.2),
        new LogNormalSpread(0.14, Math.log(1.9)),
        LearnedSpread.OF_EMPTY_LOG,
        LearnedSpread.beforeAnyTrial(0.4, Math.log(1.2)),
        LearnedSpread.OF_EMPTY_LOG.widened(2));
  }

  @ParameterizedTest
  @MethodSource("priors")
  void adds_up_to_one_and_its_quantiles_cut_it_there(SpreadPrior prior) {
    assertThat(integral(prior, 1e-9, 30)).isCloseTo(1, within(1e-6));
    for (double p : new double[] {0.05, 0.5, 0.95}) {
      assertThat(integral(prior, 1e-9, prior.quantile(p))).isCloseTo(p, within(1e-6));
    }
  }

  @ParameterizedTest
  @MethodSource("priors")
  void its_root_mean_square_is_that_of_its_density(SpreadPrior prior) {
    double square =
        byLegendre(ln -> Math.exp(3 * ln + prior.logDensity(Math.exp(ln))), Math.log(1e-9), 4);
    assertThat(prior.rootMeanSquare()).isCloseTo(Math.sqrt(square), within(1e-4));
  }

  @ParameterizedTest
  @MethodSource("priors")
  void its_derivatives_are_those_of_small_steps(SpreadPrior prior) {
    for (double omega : new double[] {0.003, 0.02, 0.1, 0.25, 0.8, 2}) {
      double h = 1e-4 * omega;
      double up = prior.logDensity(omega + h);
      double down = prior.logDensity(omega - h);
      double here = prior.logDensity(omega);
      assertThat(prior.slope(omega) * omega).isCloseTo((up - down) / (2 * h) * omega, within(1e-3));
      assertThat(prior.bend(omega) * omega * omega)
          .isCloseTo((up - 2 * here + down) / (h * h) * omega * omega, within(1e-2));
    }
  }

  @ParameterizedTest
  @MethodSource("priors")
  void its_quick_density_is_the_same(SpreadPrior prior) {
    DoubleUnaryOperator density = prior.density();
    for (double ln = -60; ln < 60; ln += 0.37) {
      double exact = prior.logDensity(Math.exp(ln));
      assertThat(density.applyAsDouble(Math.exp(ln)))
          .as("at " + Math.exp(ln))
          .isCloseTo(exact, within(1e-11 * Math.max(1, Math.abs(exact))));
    }
  }

  @ParameterizedTest
  @MethodSource("priors")
  void twice_as_wide_has_quantiles_twice_as_high(SpreadPrior prior) {
    for (double p : new double[] {0.1, 0.5, 0.9}) {
      assertThat(prior.widened(2).quantile(p))
          .isCloseTo(2 * prior.quantile(p), within(1e-6 * prior.quantile(p)));
    }
  }

  /** Over the logarithm, as densities reach over orders of magnitude. */
  private static double integral(SpreadPrior prior, double low, double high) {
    return byLegendre(
        ln -> Math.exp(ln + prior.logDensity(Math.exp(ln))), Math.log(low), Math.log(high));
  }

  private static double byLegendre(UnivariateFunction of, double low, double high) {
    return new IterativeLegendreGaussIntegrator(32, 1e-9, 1e-9).integrate(1_000_000, of, low, high);
  }
}
