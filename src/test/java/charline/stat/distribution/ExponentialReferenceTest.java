package charline.stat.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against R 4 ({@code pexp}), to the last two bits, on both sides of ln 2. */
class ExponentialReferenceTest {
  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "1e-300, 1e-300",
    "1e-10, 9.9999999995000007e-11",
    "0.01, 0.0099501662508319471",
    "0.5, 0.39346934028736658",
    "0.693, 0.4999264043042323",
    "0.694, 0.50042622794645497",
    "1, 0.63212055882855767",
    "3, 0.95021293163213605",
    "40, 1",
    "800, 1",
  })
  void the_distribution_function_is_what_pexp_says(double x, double probability) {
    assertThat(Exponential.cdf(x)).isCloseTo(probability, within(2.3e-16 * probability));
  }
}
