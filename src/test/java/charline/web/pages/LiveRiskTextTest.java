package charline.web.pages;

import static org.assertj.core.api.Assertions.assertThat;

import charline.answer.Dialled;
import charline.exposure.DoseForm;
import charline.exposure.LineScan;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.model.Fitter;
import charline.model.ReferenceStrata;
import charline.model.Trials;
import charline.trial.Patch;
import charline.web.live.LiveModels;
import charline.window.LiveForecast;
import charline.window.Requirements;
import charline.window.Strokes;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What the page says of a dialled setting, on latex over pine of the reference strata. */
class LiveRiskTextTest {
  private static Trials trials;
  private static LiveModels.Known known;

  @BeforeAll
  static void fit() {
    trials = ReferenceStrata.trials("latex", "pine");
    known =
        new LiveModels.Known(
            Optional.of(LiveForecast.fitted(Fitter.withDefaults(), trials)), false);
  }

  private static Map<String, Object> said(DoseForm form, Spot spot, Optional<Pulses> pulses) {
    Patch patch = trials.patches().get(0);
    return LiveRiskText.of(
        trials.stratum(),
        known,
        new Dialled(
            patch.rig(),
            new Settings(patch.settings().power(), form, spot, pulses),
            patch.burnedAt(),
            1,
            Strokes.SINGLE),
        Requirements.USUAL);
  }

  @Test
  void a_knob_outside_the_trials_is_named_with_its_value_and_what_was_tried() {
    Settings usual = trials.patches().get(0).settings();
    assertThat(said(usual.form(), usual.spot(), usual.pulses()))
        .hasEntrySatisfying("state", state -> assertThat(state).isNotEqualTo("untried"))
        .hasEntrySatisfying(
            "bounds", words -> assertThat((String) words).startsWith("At most 1 in"));

    double rate = usual.pulses().orElseThrow().repetitionKilohertz();
    Map<String, Object> other =
        said(usual.form(), usual.spot(), Optional.of(new Pulses(rate, OptionalDouble.of(350))));
    assertThat(other)
        .containsEntry("state", "untried")
        .containsEntry("word", "Not tried: no promise here")
        .containsEntry(
            "bounds", "Outside the patches: a pulse duration of 350 ns (tried: 100 ns).");
    assertThat((String) other.get("rests")).startsWith("Beyond the trials these figures are");
  }

  @Test
  void lines_that_do_not_touch_are_named() {
    Settings usual = trials.patches().get(0).settings();
    double spot = usual.spot().oneOverESquaredMillimetres();
    Map<String, Object> apart = said(new LineScan(2000, spot + 0.1), usual.spot(), usual.pulses());
    assertThat((String) apart.get("note"))
        .contains("they do not touch, so they leave stripes of finish.");
    assertThat(said(new LineScan(2000, spot), usual.spot(), usual.pulses()))
        .doesNotContainKey("note");
  }
}
