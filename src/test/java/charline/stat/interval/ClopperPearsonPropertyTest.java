package charline.stat.interval;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;

/** What exact bounds promise, checked by adding up binomial probabilities. */
class ClopperPearsonPropertyTest {

  @Test
  void a_bound_holds_at_least_as_often_as_it_says() {
    int trials = 17;
    for (double risk = 0.02; risk < 1; risk += 0.04) {
      BinomialDistribution counts = new BinomialDistribution(null, trials, risk);
      double below = 0;
      double above = 0;
      for (int events = 0; events <= trials; events++) {
        ClopperPearson seen = new ClopperPearson(events, trials);
        below += seen.atLeast(0.95) <= risk ? counts.probability(events) : 0;
        above += seen.atMost(0.95) >= risk ? counts.probability(events) : 0;
      }
      assertThat(below).isGreaterThanOrEqualTo(0.95 - 1e-9);
      assertThat(above).isGreaterThanOrEqualTo(0.95 - 1e-9);
    }
  }

  @Test
  void bounds_move_outwards_with_confidence_and_mirror_each_other() {
    for (int events = 0; events <= 12; events++) {
      ClopperPearson seen = new ClopperPearson(events, 12);
      ClopperPearson mirrored = new ClopperPearson(12 - events, 12);
      double lower = 1.1;
      double upper = -0.1;
      for (double confidence : new double[] {0.5, 0.8, 0.9, 0.95, 0.99, 0.999}) {
        assertThat(seen.atLeast(confidence)).isLessThanOrEqualTo(lower);
        assertThat(seen.atMost(confidence)).isGreaterThanOrEqualTo(upper);
        assertThat(seen.atMost(confidence))
            .isCloseTo(1 - mirrored.atLeast(confidence), within(1e-12));
        lower = seen.atLeast(confidence);
        upper = seen.atMost(confidence);
      }
    }
  }

  @Test
  void impossible_counts_are_refused() {
    assertThatThrownBy(() -> new ClopperPearson(1, 0))
        .hasMessage("Trials must be 1 or more, not 0.");
    assertThatThrownBy(() -> new ClopperPearson(5, 4))
        .hasMessage("Events must be between 0 and the 4 trials, not 5.");
    assertThatThrownBy(() -> new ClopperPearson(1, 4).atMost(1))
        .hasMessage("Confidence must lie between 0 and 1, not 1.0; write 0.95 for 95 %.");
    assertThatThrownBy(() -> ClopperPearson.trialsWithoutEvent(Double.NaN, 0.95))
        .hasMessage("Limit must lie between 0 and 1, not NaN; write 0.05 for 5 %.");
    assertThatThrownBy(() -> ClopperPearson.trialsWithoutEvent(1e-12, 0.95))
        .hasMessage(
            "Limit must be reachable with at most 2147483647 trials, not 1.0E-12; choose a larger"
                + " one.");
  }
}
