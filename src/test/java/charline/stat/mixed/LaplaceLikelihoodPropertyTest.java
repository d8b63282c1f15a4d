package charline.stat.mixed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.stat.linear.Design;
import charline.stat.regression.BinomialSample;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The mode of a group's intercept is where its slope, s (y - m p) - u, is zero. */
class LaplaceLikelihoodPropertyTest {
  @Test
  void three_events_of_seven_have_their_mode_at_1_284() {
    assertThat(mode(3, 7, -5, 3.5)).isCloseTo(1.284, within(5e-4));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.3, 1, 3.5, 8, 25})
  void the_slope_is_zero_at_the_mode(double s) {
    for (double predictor = -12; predictor <= 12; predictor += 0.5) {
      for (int events = 0; events <= 7; events++) {
        double u = mode(events, 7, predictor, s);
        double risk = 1 / (1 + Math.exp(-(predictor + s * u)));
        assertThat(s * (events - 7 * risk) - u)
            .as("%d of 7 at %s", events, predictor)
            .isCloseTo(0, within(1e-9 * (1 + s * s)));
      }
    }
  }

  private static double mode(int events, int trials, double predictor, double s) {
    BinomialSample sample =
        BinomialSample.grouped(
            Design.interceptOnly(2), new int[] {events, 1}, new int[] {trials, 2});
    LaplaceLikelihood likelihood = new LaplaceLikelihood(sample, new int[] {0, 1}, 2, 30);
    double[] point = {sample.design().basis().inward(new double[] {predictor})[0], s};
    return likelihood.groups(point, List.of("a", "b")).get(0).mode() / s;
  }
}
