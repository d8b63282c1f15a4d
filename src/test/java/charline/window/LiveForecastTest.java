package charline.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import charline.exposure.Exposure;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.model.Fitter;
import charline.model.ReferenceStrata;
import charline.model.Trials;
import charline.trial.Knob;
import charline.trial.Patch;
import charline.trial.Pieces;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** On latex over pine of reference/posterior-passes-to-event. */
class LiveForecastTest {
  private static final OffsetDateTime TODAY = OffsetDateTime.parse("2026-11-01T12:00:00Z");
  private static final double CONFIDENCE = Requirements.USUAL.confidence();

  private final Trials trials = ReferenceStrata.trials("latex", "pine");
  private final RigSetup bench =
      RigSetup.of(RigSetup.mostUsedRig(trials.patches()), trials.patches(), TODAY);
  private final LiveForecast live = LiveForecast.fitted(Fitter.withDefaults(), trials);

  @Test
  void a_setting_looked_at_alone_is_told_as_in_its_window() {
    Recommendation window =
        WindowFinder.withDefaults().recommend(trials, bench, Requirements.USUAL);
    assertThat(live.recommend(bench, Requirements.USUAL))
        .usingRecursiveComparison()
        .ignoringFields("charFit", "clearingFit")
        .isEqualTo(window);
    for (Forecast told :
        window.chosen().map(b -> List.of(b.start(), b.hotCorner())).orElseThrow()) {
      LiveForecast.Expected alone =
          live.at(
              bench.rig(),
              bench.settings(told.powerPercent(), told.speedMillimetresPerSecond()),
              bench.exposure(told.powerPercent(), told.speedMillimetresPerSecond()),
              told.passes(),
              bench.strokes(),
              CONFIDENCE);
      assertThat(alone.charRiskMean()).isEqualTo(told.charRiskMean());
      assertThat(alone.charRiskUpper()).isEqualTo(told.charRiskUpper());
      assertThat(alone.clearChanceMean()).isEqualTo(told.clearChanceMean());
      assertThat(alone.clearChanceLower()).isEqualTo(told.clearChanceLower());
      assertThat(alone.tried()).isTrue();
    }
  }

  @Test
  void more_dose_chars_more_and_clears_more() {
    LiveForecast.Expected before = expected(8, 1.5, 1);
    for (double dose : new double[] {10, 14, 20, 30}) {
      LiveForecast.Expected now = expected(dose, 1.5, 1);
      assertThat(now.charRiskMean()).isGreaterThan(before.charRiskMean());
      assertThat(now.charRiskUpper()).isGreaterThan(before.charRiskUpper());
      assertThat(now.clearChanceMean()).isGreaterThan(before.clearChanceMean());
      assertThat(now.clearChanceLower()).isGreaterThan(before.clearChanceLower());
      before = now;
    }
  }

  @Test
  void a_setting_outside_the_trials_says_in_what() {
    double dose = trials.patches().get(0).exposure().doseJoulesPerCm2();
    double fluence = trials.patches().get(0).exposure().intensity();
    assertThat(expected(dose, fluence, 1).beyond()).isEmpty();
    assertThat(expected(1000, fluence, 1).beyond()).containsExactly(Beyond.HIGHER_DOSE);
    assertThat(expected(0.1, fluence, 1).beyond()).containsExactly(Beyond.LOWER_DOSE);
    assertThat(expected(dose, 100, 1).beyond()).containsExactly(Beyond.HIGHER_INTENSITY);
    assertThat(expected(dose, 0.01, 99).beyond())
        .containsExactly(Beyond.LOWER_INTENSITY, Beyond.MORE_PASSES);
  }

  /** A power check may read a trace higher than the one before; no dial repeats 3 %. */
  @Test
  void a_setting_that_was_burned_stays_tried_when_its_power_is_metered_a_trace_higher() {
    for (var patch : trials.patches()) {
      double dose = patch.exposure().doseJoulesPerCm2();
      double fluence = patch.exposure().intensity();
      int passes = patch.lastReading().passes();
      for (double trace : new double[] {1 / 1.02, 1 / 1.0002, 1, 1.0002, 1.02}) {
        assertThat(expected(dose * trace, fluence * trace, passes).beyond()).isEmpty();
      }
    }
    double highest =
        trials.patches().stream().mapToDouble(p -> p.exposure().intensity()).max().orElseThrow();
    double dose = trials.patches().get(0).exposure().doseJoulesPerCm2();
    assertThat(expected(dose, highest * 1.04, 1).beyond()).containsExactly(Beyond.HIGHER_INTENSITY);
  }

  @Test
  void fewer_passes_than_any_trial_are_told_and_models_that_fit_are_reliable() {
    List<Patch> late =
        trials.patches().stream()
            .map(p -> Pieces.withReadings(p, List.of(Pieces.after(3, p.lastReading()))))
            .toList();
    Exposure first = late.get(0).exposure();
    assertThat(
            LiveForecast.fitted(Fitter.withDefaults(), new Trials(trials.stratum(), late, false))
                .at(late.get(0).rig(), late.get(0).settings(), first, 2, Strokes.SINGLE, CONFIDENCE)
                .beyond())
        .contains(Beyond.FEWER_PASSES);
    assertThat(live.reliable()).isTrue();
  }

  @Test
  void models_that_their_own_trials_deny_are_not_reliable() {
    Trials oak = ReferenceStrata.trials("latex", "oak");
    Trials denied = new Trials(oak.stratum(), Upended.outcomes(oak.patches()), false);
    assertThat(LiveForecast.fitted(Fitter.withDefaults(), denied).reliable()).isFalse();
  }

  @Test
  void a_mix_that_nobody_tried_is_told_though_each_knob_was_tried() {
    double lowDose = Double.POSITIVE_INFINITY;
    double highFluence = 0;
    int most = 1;
    for (var patch : trials.patches()) {
      lowDose = Math.min(lowDose, patch.exposure().doseJoulesPerCm2());
      highFluence = Math.max(highFluence, patch.exposure().intensity());
      most = Math.max(most, patch.lastReading().passes());
    }
    assertThat(expected(lowDose, highFluence, most).beyond()).containsExactly(Beyond.UNLIKE_MIX);
  }

  @Test
  void a_knob_that_no_trial_had_is_named_with_what_was_tried() {
    Settings usual = bench.settings(50, 20);
    Settings other =
        new Settings(
            usual.power(),
            usual.form(),
            usual.spot(),
            Optional.of(new Pulses(40, OptionalDouble.of(350))));
    assertThat(at(usual).untried()).isEmpty();
    assertThat(at(other).tried()).isFalse();
    assertThat(at(other).untried())
        .containsExactly(new UntriedKnob(Knob.PULSE, 350, List.of(100.0)));
    Settings fast = bench.settings(50, 400);
    assertThat(at(fast).untried()).extracting(UntriedKnob::knob).containsExactly(Knob.HAND);
  }

  private LiveForecast.Expected at(Settings settings) {
    return live.at(bench.rig(), settings, bench.exposure(50, 20), 1, Strokes.SINGLE, CONFIDENCE);
  }

  @Test
  void a_question_that_counts_tints_differently_needs_models_of_its_own() {
    assertThatThrownBy(() -> live.recommend(bench, new Requirements(0.05, 0.9, 0.9, true)))
        .hasMessage("The models must count a tint as the question does; fit them anew.");
  }

  private LiveForecast.Expected expected(double dose, double fluence, int passes) {
    Exposure any = bench.exposure(50, 20);
    return live.at(
        bench.rig(),
        bench.settings(50, 20),
        new Exposure(any.deliveredWatts(), dose, fluence, any.areaRate()),
        passes,
        Strokes.SINGLE,
        CONFIDENCE);
  }
}
