package charline.stat.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Against R 4 ({@code pnorm}, {@code qnorm}), all digits; the last bit of z counts z² times in a
 * tail.
 */
class StandardNormalReferenceTest {
  private static final double DIGITS = 4e-16;

  @ParameterizedTest
  @CsvSource({
    "-10, 7.6198530241605269e-24",
    "-5, 2.8665157187919391e-07",
    "-1.5, 0.066807201268858071",
    "-0.1, 0.46017216272297101",
    "0, 0.5",
    "0.3, 0.61791142218895267",
    "2, 0.97724986805182079",
    "5, 0.99999971334842808",
  })
  void below_is_what_pnorm_says(double z, double probability) {
    assertThat(StandardNormal.below(z))
        .isCloseTo(probability, within(DIGITS * (1 + z * z) * probability));
    assertThat(StandardNormal.beyond(z))
        .isCloseTo(2 * Math.min(probability, 1 - probability), within(2 * DIGITS));
  }

  @ParameterizedTest
  @CsvSource({
    "1e-300, -37.047096299361201",
    "1e-12, -7.0344838253011321",
    "0.001, -3.0902323061678132",
    "0.3, -0.52440051270804067",
    "0.5, 0",
    "0.95, 1.6448536269514715",
    "0.975, 1.9599639845400536",
    "0.995, 2.5758293035488999",
  })
  void a_quantile_is_what_qnorm_says(double probability, double z) {
    assertThat(StandardNormal.quantile(probability)).isCloseTo(z, within(40 * DIGITS));
  }

  /** A difference of two probabilities near 1 would be 6.66e-16. */
  @Test
  void a_slice_of_a_tail_keeps_its_digits() {
    double slice = 6.1261652260497512e-16;
    assertThat(StandardNormal.between(8, 8.5)).isCloseTo(slice, within(1e-12 * slice));
    assertThat(StandardNormal.between(-8.5, -8)).isCloseTo(slice, within(1e-12 * slice));
  }

  @Test
  void the_middle_reaches_as_far_as_its_quantiles() {
    assertThat(StandardNormal.reachOfMiddle(0.95))
        .isCloseTo(1.9599639845400536, within(2 * DIGITS));
    assertThat(StandardNormal.reachOfMiddle(0.99))
        .isCloseTo(2.5758293035488999, within(4 * DIGITS));
  }
}
