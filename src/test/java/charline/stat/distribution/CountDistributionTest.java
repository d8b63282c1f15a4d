package charline.stat.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;

class CountDistributionTest {
  @Test
  void equal_chances_are_a_binomial() {
    double[] p = CountDistribution.ofTrials(new double[] {0.3, 0.3, 0.3, 0.3, 0.3});
    BinomialDistribution binomial = new BinomialDistribution(null, 5, 0.3);
    for (int k = 0; k <= 5; k++) {
      assertThat(p[k]).isCloseTo(binomial.probability(k), within(1e-12));
    }
  }

  @Test
  void unequal_chances_add_up_by_hand() {
    CountDistribution count =
        new CountDistribution(CountDistribution.ofTrials(new double[] {0.5, 0.2}));
    assertThat(count.probability()).containsExactly(new double[] {0.4, 0.5, 0.1}, within(1e-12));
    assertThat(count.mean()).isCloseTo(0.7, within(1e-12));
    assertThat(count.quantile(0.05)).isZero();
    assertThat(count.quantile(0.95)).isEqualTo(2);
  }

  @Test
  void the_tail_counts_half_of_what_was_seen_twice() {
    CountDistribution count = new CountDistribution(new double[] {0.4, 0.5, 0.1});
    assertThat(count.tail(2)).isCloseTo(0.1, within(1e-12));
    assertThat(count.tail(0)).isCloseTo(0.4, within(1e-12));
    assertThat(count.tail(1)).isCloseTo(2 * (0.1 + 0.25), within(1e-12));
  }
}
