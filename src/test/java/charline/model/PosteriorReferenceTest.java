package charline.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.exposure.Exposure;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Six strata whose posteriors were computed by other software: SOURCE.md beside the data. */
class PosteriorReferenceTest {
  static Stream<Arguments> fits() {
    List<Arguments> fits = new ArrayList<>();
    ReferenceStrata.expected()
        .forEach(
            (stratum, events) ->
                events.keySet().forEach(event -> fits.add(Arguments.of(stratum, event))));
    assertThat(fits).hasSize(12);
    return fits.stream();
  }

  @ParameterizedTest(name = "{0} {1}")
  @MethodSource("fits")
  void quantiles_and_probabilities_agree(String stratum, String event) {
    Map<String, Object> expected = ReferenceStrata.expected().get(stratum).get(event);
    String[] words = stratum.split("\\|");
    ModelFit fit =
        ReferenceStrata.fitter()
            .fit(
                ReferenceStrata.trials(words[0], words[1]),
                event.equals("char") ? Event.CHAR : Event.CLEARING);

    assertThat(fit.referenceIntensity()).isCloseTo(number(expected, "f0_j_cm2"), within(1e-9));
    assertThat(fit.paretoK()).isLessThan(ModelFit.PARETO_K_LIMIT);
    agrees(fit.evenDoseJoulesPerCm2(), expected, "dose_even_j_cm2");
    agrees(fit.phi(), expected, "phi");
    agrees(fit.psi(), expected, "psi");
    agrees(fit.sigma(), expected, "sigma");
    agrees(fit.omega(), expected, "omega");
    for (Object at : (List<?>) expected.get("at")) {
      probabilityAgrees(fit.posterior(), (Map<?, ?>) at);
    }
  }

  private static void agrees(Estimate ours, Map<?, ?> expected, String key) {
    List<?> q = (List<?>) expected.get(key);
    double low = ((Number) q.get(0)).doubleValue();
    double median = ((Number) q.get(1)).doubleValue();
    double high = ((Number) q.get(2)).doubleValue();
    double tolerance = 0.05 * (high - low);
    assertThat(ours.low()).as(key + " 5 %").isCloseTo(low, within(tolerance));
    assertThat(ours.median()).as(key + " median").isCloseTo(median, within(tolerance));
    assertThat(ours.high()).as(key + " 95 %").isCloseTo(high, within(tolerance));
  }

  private static void probabilityAgrees(Posterior posterior, Map<?, ?> at) {
    double[] chance =
        posterior.newBoardChance(
            number(at, "dose_j_cm2"),
            number(at, "fluence_j_cm2"),
            ((Number) at.get("passes")).intValue());
    Map<?, ?> expected = (Map<?, ?>) at.get("new_board_probability");
    close(posterior.mean(chance), number(expected, "mean"), at + " mean");
    close(posterior.quantile(chance, 0.1), number(expected, "q10"), at + " 10 %");
    close(posterior.quantile(chance, 0.9), number(expected, "q90"), at + " 90 %");
  }

  private static void close(double ours, double expected, String what) {
    assertThat(ours).as(what).isCloseTo(expected, within(Math.max(0.01, 0.1 * expected)));
  }

  private static double number(Map<?, ?> map, String key) {
    return ((Number) map.get(key)).doubleValue();
  }

  /** The reference settings are those of a real rig, so dose and fluence come out alike. */
  @ParameterizedTest(name = "{0} {1}")
  @MethodSource("fits")
  void doses_and_fluences_are_the_reference_ones(String stratum, String event) {
    String[] words = stratum.split("\\|");
    Exposure exposure = ReferenceStrata.trials(words[0], words[1]).patches().get(0).exposure();
    // P = 2 W per %, D = P / (60 mm u): ratio of D to fluence fixes the hand speed.
    assertThat(exposure.deliveredWatts()).isBetween(60.0, 200.0);
    assertThat(exposure.intensity())
        .isCloseTo(exposure.deliveredWatts() / 40_000 / (Math.PI * 0.06 * 0.06 / 4), within(1e-12));
  }
}
