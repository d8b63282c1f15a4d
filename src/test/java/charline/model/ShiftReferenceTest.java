package charline.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.exposure.Figure;
import charline.model.way.Way;
import charline.shops.ShopBench;
import charline.trial.Circumstances;
import charline.trial.Knob;
import charline.trial.Patch;
import charline.trial.Stratum;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Against make.R of reference/shift-of-figures, which samples the same model another way. */
class ShiftReferenceTest {
  private static final String FOLDER = "/reference/shift-of-figures/";

  @ParameterizedTest
  @EnumSource(Event.class)
  void shifts_of_three_figures_agree(Event event) throws IOException {
    Map<String, Estimate> expected = expected(event);
    ModelFit fit = ReferenceStrata.fitter().fit(trials(), event);

    assertThat(fit.way().figure()).contains(Figure.LINE);
    assertThat(fit.paretoK()).isLessThan(ModelFit.PARETO_K_LIMIT);
    agrees(fit.tau(), expected, "tau_line");
    agrees(fit.phi(), expected, "phi");
    agrees(fit.psi(), expected, "psi");
    agrees(fit.sigma(), expected, "sigma");
    agrees(fit.omega(), expected, "omega");
    assertThat(fit.wayEffects()).hasSize(2);
    fit.wayEffects()
        .forEach(
            effect ->
                agrees(effect.weight(), expected, effect.level().orElseThrow() + "_over_line"));
  }

  @ParameterizedTest
  @EnumSource(Event.class)
  void another_figure_takes_the_same_draws(Event event) throws IOException {
    Trials circles = trials().asking(Way.UNSAID.with(Optional.of(Figure.CIRCLE)));
    ModelFit moved = ReferenceStrata.fitter().fit(trials(), event).inWay(circles.way());
    ModelFit asked = ReferenceStrata.fitter().fit(circles, event);
    assertThat(moved.tau().median()).isCloseTo(asked.tau().median(), within(1e-9));
    assertThat(moved.tau().high()).isCloseTo(asked.tau().high(), within(1e-9));
    assertThat(moved.wayEffects().get(0).level()).isEqualTo(asked.wayEffects().get(0).level());
    assertThat(moved.wayEffects().get(0).weight().low())
        .isCloseTo(asked.wayEffects().get(0).weight().low(), within(1e-9));
  }

  /** Within a twentieth of the posterior's spread, as for the other strata. */
  private static void agrees(Estimate ours, Map<String, Estimate> expected, String quantity) {
    Estimate other = expected.get(quantity);
    double tolerance = 0.05 * (other.high() - other.low());
    assertThat(ours.low()).as(quantity + " 5 %").isCloseTo(other.low(), within(tolerance));
    assertThat(ours.median()).as(quantity + " median").isCloseTo(other.median(), within(tolerance));
    assertThat(ours.high()).as(quantity + " 95 %").isCloseTo(other.high(), within(tolerance));
  }

  private static Trials trials() throws IOException {
    List<Patch> patches = new ArrayList<>();
    for (String[] row : rows("trials.csv")) {
      List<ShopBench.Seen> seen = new ArrayList<>();
      int charredAt = Integer.parseInt(row[6]);
      int clearedAt = Integer.parseInt(row[7]);
      for (int passes = 1; passes <= Integer.parseInt(row[5]); passes++) {
        seen.add(
            new ShopBench.Seen(
                passes,
                charredAt > 0 && passes >= charredAt,
                clearedAt > 0 && passes >= clearedAt));
      }
      patches.add(
          ShopBench.patch(
                  Integer.parseInt(row[0]),
                  Integer.parseInt(row[1]),
                  Double.parseDouble(row[3]),
                  Double.parseDouble(row[4]),
                  seen)
              .with(Circumstances.of(Map.of(Knob.FIGURE, row[2]))));
    }
    return new Trials(Stratum.of(patches.get(0)), patches, false);
  }

  private static Map<String, Estimate> expected(Event event) throws IOException {
    Map<String, Estimate> expected = new HashMap<>();
    for (String[] row : rows("expected.csv")) {
      if (row[0].equals(event == Event.CHAR ? "char" : "clearing")) {
        expected.put(
            row[1],
            new Estimate(
                Double.parseDouble(row[3]),
                Double.parseDouble(row[2]),
                Double.parseDouble(row[4])));
      }
    }
    return expected;
  }

  private static List<String[]> rows(String file) throws IOException {
    try (InputStream in = ShiftReferenceTest.class.getResourceAsStream(FOLDER + file)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .skip(1)
          .map(line -> line.replace(" ", "").split(","))
          .toList();
    }
  }
}
