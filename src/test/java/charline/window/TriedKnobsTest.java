package charline.window;

import static charline.trial.Pieces.NOON;
import static charline.trial.Pieces.board;
import static charline.trial.Pieces.finish;
import static charline.trial.Pieces.reading;
import static charline.trial.Pieces.rig;
import static org.assertj.core.api.Assertions.assertThat;

import charline.exposure.DoseForm;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.SpotDefinition;
import charline.exposure.TimedArea;
import charline.trial.Knob;
import charline.trial.Patch;
import charline.trial.Pieces;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which value of a knob counts as tried. */
class TriedKnobsTest {
  private static final Spot SPOT = new Spot(0.5, SpotDefinition.ONE_OVER_E_SQUARED);
  private static final Pulses PULSES = new Pulses(60, OptionalDouble.of(100));

  private static Settings settings(DoseForm form, Spot spot, Pulses pulses) {
    return new Settings(PowerSetting.percent(50), form, spot, Optional.of(pulses));
  }

  private static Settings hand(double width, double speed) {
    return settings(new HandPass(width, speed), SPOT, PULSES);
  }

  private static Patch burned(int number, Settings settings) {
    return Pieces.patch(
        number,
        rig(1, "Heron", 200),
        board(1, "pine"),
        finish(1, "latex"),
        settings,
        reading(1, "residue"));
  }

  /** Hand speeds 8 to 45 mm/s at 60 mm, all at 60 kHz and 100 ns, and one patch at 200 ns. */
  private static TriedKnobs tried() {
    return TriedKnobs.of(
        List.of(
            burned(1, hand(60, 8)),
            burned(2, hand(60, 45)),
            burned(
                3, settings(new HandPass(60, 20), SPOT, new Pulses(60, OptionalDouble.of(200))))));
  }

  private static List<Knob> outside(Settings settings) {
    return tried().untried(settings, OptionalDouble.empty()).stream()
        .map(UntriedKnob::knob)
        .toList();
  }

  @ParameterizedTest
  @CsvSource({
    "60, 46.3, ''",
    "60, 46.4, HAND",
    "60, 7.8, ''",
    "60, 7.7, HAND",
    "61.8, 20, ''",
    "62, 20, WIDTH",
    "58.3, 20, ''",
    "58, 20, WIDTH"
  })
  void hand_speed_and_width_are_tried_between_the_ends_and_three_percent_beyond(
      double width, double speed, String knob) {
    assertThat(outside(hand(width, speed)))
        .isEqualTo(knob.isEmpty() ? List.of() : List.of(Knob.valueOf(knob)));
  }

  @ParameterizedTest
  @CsvSource({
    "100, true",
    "103, true",
    "97.1, true",
    "104, false",
    "150, false",
    "200, true",
    "206, true",
    "5, false",
    "350, false"
  })
  void a_pulse_duration_is_tried_only_where_a_trial_had_it(double nanoseconds, boolean known) {
    Pulses pulses = new Pulses(60, OptionalDouble.of(nanoseconds));
    List<UntriedKnob> untried =
        tried().untried(settings(new HandPass(60, 20), SPOT, pulses), OptionalDouble.empty());
    assertThat(untried.isEmpty()).isEqualTo(known);
    if (!known) {
      assertThat(untried)
          .containsExactly(new UntriedKnob(Knob.PULSE, nanoseconds, List.of(100.0, 200.0)));
    }
  }

  /** 0.5 mm across 1/e2 is 0.3536 mm across 1/e. */
  @Test
  void spots_are_compared_under_one_definition_and_told_under_that_of_the_question() {
    Spot same = SPOT.as(SpotDefinition.ONE_OVER_E);
    assertThat(outside(settings(new HandPass(60, 20), same, PULSES))).isEmpty();
    Spot wider = new Spot(0.5, SpotDefinition.ONE_OVER_E);
    List<UntriedKnob> untried =
        tried().untried(settings(new HandPass(60, 20), wider, PULSES), OptionalDouble.empty());
    assertThat(untried).hasSize(1);
    assertThat(untried.get(0).value()).isEqualTo(0.5);
    assertThat(untried.get(0).tried().get(0))
        .isCloseTo(0.5 / Math.sqrt(2), org.assertj.core.data.Offset.offset(1e-12));
  }

  @Test
  void a_scanner_was_not_tried_where_all_was_led_by_hand() {
    Settings lines = settings(new LineScan(5000, 0.1), SPOT, PULSES);
    assertThat(outside(lines)).containsExactlyInAnyOrder(Knob.SPACING, Knob.SCAN);
    assertThat(tried().speeds(SpeedKnob.Kind.SCAN)).isEmpty();
    assertThat(tried().speeds(SpeedKnob.Kind.HAND)).contains(new Range(8, 45));
  }

  /** 60 cm2 in 5 s over 60 mm are 20 mm/s. */
  @Test
  void a_pass_timed_over_an_area_is_a_hand_speed_at_the_usual_width() {
    Settings timed = settings(new TimedArea(60, 5), SPOT, PULSES);
    assertThat(tried().untried(timed, OptionalDouble.of(60))).isEmpty();
    Settings slow = settings(new TimedArea(60, 50), SPOT, PULSES);
    assertThat(tried().untried(slow, OptionalDouble.of(60)))
        .containsExactly(new UntriedKnob(Knob.HAND, 2, List.of(8.0, 45.0)));
  }

  @Test
  void a_knob_that_no_trial_noted_was_not_tried() {
    Pulses unnoted = new Pulses(60, OptionalDouble.empty());
    TriedKnobs none =
        TriedKnobs.of(List.of(burned(1, settings(new HandPass(60, 20), SPOT, unnoted))));
    assertThat(none.untried(hand(60, 20), OptionalDouble.empty()))
        .containsExactly(new UntriedKnob(Knob.PULSE, 100, List.of()));
    assertThat(outside(settings(new HandPass(60, 20), SPOT, unnoted))).isEmpty();
  }

  /** Lines as far apart as the spot is wide touch; farther apart they leave stripes. */
  @ParameterizedTest
  @CsvSource({"0.5, false", "0.51, true", "0.1, false"})
  void lines_farther_apart_than_the_spot_do_not_touch(double spacing, boolean apart) {
    RigSetup bench =
        new RigSetup(
            rig(1, "Heron", 200),
            NOON,
            SPOT,
            Optional.of(PULSES),
            new SpeedKnob(SpeedKnob.Kind.SCAN, spacing));
    assertThat(bench.linesApart()).isEqualTo(apart);
    assertThat(bench.withSpeed(new SpeedKnob(SpeedKnob.Kind.HAND, 60)).linesApart()).isFalse();
  }
}
