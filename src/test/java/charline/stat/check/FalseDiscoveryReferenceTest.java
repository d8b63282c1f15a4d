package charline.stat.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/**
 * The fifteen tail probabilities of the example of Benjamini and Hochberg 1995 (JRSS B 57:289-300;
 * data of Neuhaus et al. 1992, J. Am. Coll. Cardiol. 19:885-891), as the SciPy reference reprints
 * them (scipy.stats.false_discovery_control, read in November 2026): at a false discovery rate of 5
 * % the four smallest are significant, where Bonferroni finds three.
 */
class FalseDiscoveryReferenceTest {
  private static final double[] PRINTED = {
    0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.3240, 0.4262, 0.5719,
    0.6528, 0.7590, 1.000
  };

  @Test
  void the_four_smallest_are_significant() {
    double[] adjusted = FalseDiscovery.adjust(PRINTED);
    assertThat(Arrays.stream(adjusted).filter(q -> q <= 0.05).count()).isEqualTo(4);
    assertThat(adjusted[3]).isCloseTo(0.0095 * 15 / 4, within(1e-12));
    assertThat(adjusted[14]).isEqualTo(1);
  }

  @Test
  void order_does_not_matter() {
    double[] turned = {0.3240, 0.0001, 0.0095};
    double[] adjusted = FalseDiscovery.adjust(turned);
    assertThat(adjusted)
        .containsExactly(new double[] {0.3240, 0.0003, 0.0095 * 3 / 2}, within(1e-12));
  }
}
