package charline.stat.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against R 4 ({@code qlogis}), all digits; about a half, where it is 0, to a bit of 1. */
class LogisticReferenceTest {
  @ParameterizedTest
  @CsvSource({
    "1e-300, -690.77552789821368",
    "1e-10, -23.025850929840455",
    "0.1, -2.1972245773362191",
    "0.49999999, -3.9999999890767333e-08",
    "0.5, 0",
    "0.7, 0.84729786038720345",
    "0.999999, 13.815509557935018",
    "0.999999999999, 27.63104323789236",
  })
  void the_quantile_is_what_qlogis_says(double p, double z) {
    assertThat(Logistic.quantile(p)).isCloseTo(z, within(2.3e-16 * (1 + Math.abs(z))));
  }
}
