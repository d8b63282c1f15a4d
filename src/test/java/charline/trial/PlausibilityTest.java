package charline.trial;

import static org.assertj.core.api.Assertions.assertThat;

import charline.exposure.DoseForm;
import charline.exposure.Emission;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.SpotDefinition;
import charline.exposure.TimedArea;
import charline.trial.Plausibility.Knob;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Usual ranges: common practice, no published source. */
class PlausibilityTest {
  private static Settings pulsed(double percent, double kilohertz, double spot, DoseForm form) {
    return new Settings(
        PowerSetting.percent(percent),
        form,
        new Spot(spot, SpotDefinition.ONE_OVER_E_SQUARED),
        Optional.of(new Pulses(kilohertz, OptionalDouble.of(100))));
  }

  static Stream<Settings> usual() {
    return Stream.of(
        pulsed(60, 40, 0.6, new HandPass(60, 18)),
        pulsed(10, 10, 0.1, new HandPass(100, 60)),
        pulsed(100, 100, 2, new LineScan(15_000, 0.05)),
        pulsed(100, 60, 0.5, new TimedArea(25, 4)));
  }

  @ParameterizedTest
  @MethodSource("usual")
  void usual_settings_raise_no_doubt(Settings settings) {
    assertThat(Plausibility.about(Emission.PULSED, 300, settings)).isEmpty();
  }

  static Stream<Arguments> slips() {
    HandPass hand = new HandPass(60, 18);
    return Stream.of(
        Arguments.of(pulsed(60, 40, 5000, hand), Knob.SPOT),
        Arguments.of(pulsed(60, 40_000, 0.6, hand), Knob.RATE),
        Arguments.of(pulsed(60, 40, 0.6, new HandPass(600, 18)), Knob.WIDTH),
        Arguments.of(pulsed(60, 40, 0.6, new HandPass(60, 1800)), Knob.HAND),
        Arguments.of(pulsed(60, 40, 0.6, new LineScan(5, 0.06)), Knob.SCAN),
        Arguments.of(pulsed(60, 40, 0.6, new LineScan(5000, 60)), Knob.SPACING),
        Arguments.of(pulsed(60, 40, 0.6, new TimedArea(250_000, 4)), Knob.AREA),
        Arguments.of(pulsed(60, 40, 0.6, new TimedArea(25, 4000)), Knob.SECONDS),
        Arguments.of(pulsed(100, 1, 0.02, hand), Knob.FLUENCE),
        Arguments.of(pulsed(100, 40, 0.6, new HandPass(1, 1)), Knob.DOSE));
  }

  @ParameterizedTest
  @MethodSource("slips")
  void a_slip_of_the_pen_is_doubted_once_or_with_its_consequence(Settings settings, Knob knob) {
    assertThat(Plausibility.about(Emission.PULSED, 300, settings))
        .extracting(Plausibility.Doubt::knob)
        .containsExactly(knob);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          SPOT     | 5000 | Spot diameter of 5000 mm is outside 0.02 to 20 mm (usual: 0.1 to 2); correct it, or say that you are sure.
          PASSES   | 900  | Passes of 900 is outside 1 to 50 (usual: 1 to 10); correct it, or say that you are sure.
          MOISTURE | 0.5  | Moisture of 0.5 % is outside 2 to 60 % (usual: 6 to 20); correct it, or say that you are sure.
          THICKNESS| 90000| Coat thickness of 90000 um is outside 1 to 5000 um (usual: 20 to 200); correct it, or say that you are sure.
          """)
  void a_doubt_says_the_range_and_the_way_out(Knob knob, double value, String sentence) {
    assertThat(knob.doubts(value))
        .extracting(Plausibility.Doubt::sentence)
        .containsExactly(sentence);
  }
}
