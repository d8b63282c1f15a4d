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
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Usual ranges: common practice, no published source. */
class PlausibilityTest {
  private static final OffsetDateTime NOON = Pieces.NOON;
  private static final Rig HERON = rig(Emission.PULSED, 300, 1064, 0.6, 100, 60);
  private static final Rig OTTER = rig(Emission.CONTINUOUS, 1500, 1080, 0.8, 100, 60);

  private static Settings pulsed(double percent, double kilohertz, double spot, DoseForm form) {
    return new Settings(
        PowerSetting.percent(percent),
        form,
        new Spot(spot, SpotDefinition.ONE_OVER_E_SQUARED),
        Optional.of(new Pulses(kilohertz, OptionalDouble.of(100))));
  }

  private static Settings usualWith(PowerSetting power, double nanoseconds) {
    return new Settings(
        power,
        new HandPass(60, 18),
        new Spot(0.6, SpotDefinition.ONE_OVER_E_SQUARED),
        Optional.of(new Pulses(40, OptionalDouble.of(nanoseconds))));
  }

  static Stream<Settings> usual() {
    return Stream.of(
        pulsed(60, 40, 0.6, new HandPass(60, 18)),
        pulsed(10, 10, 0.1, new HandPass(100, 60)),
        pulsed(100, 100, 2, new LineScan(15_000, 0.05)),
        pulsed(100, 60, 0.5, new TimedArea(25, 4)),
        usualWith(PowerSetting.watts(315), 100));
  }

  @ParameterizedTest
  @MethodSource("usual")
  void usual_settings_raise_no_doubt(Settings settings) {
    assertThat(Plausibility.about(HERON, settings, NOON)).isEmpty();
  }

  /** Of a continuous rig the irradiance is looked at, and a power in watts goes as it is. */
  @Test
  void usual_settings_of_a_continuous_rig_raise_no_doubt() {
    assertThat(Plausibility.about(OTTER, continuous(0.8), NOON)).isEmpty();
    assertThat(knobs(Plausibility.about(OTTER, continuous(0.05), NOON)))
        .containsExactly(Knob.IRRADIANCE);
  }

  /** 1500 W on a spot of 0.8 mm is 298 kW/cm2; on one of 0.05 mm, 76 MW/cm2. */
  private static Settings continuous(double spot) {
    return new Settings(
        PowerSetting.watts(1500),
        new LineScan(8000, 0.25),
        new Spot(spot, SpotDefinition.ONE_OVER_E_SQUARED),
        Optional.empty());
  }

  private static List<Knob> knobs(List<Plausibility.Doubt> doubts) {
    return doubts.stream().map(Plausibility.Doubt::knob).toList();
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
        Arguments.of(usualWith(PowerSetting.watts(361), 100), Knob.POWER_W),
        Arguments.of(usualWith(PowerSetting.percent(60), 100_000), Knob.PULSE),
        Arguments.of(pulsed(100, 1, 0.02, hand), Knob.FLUENCE),
        // 300 W on 0.2 cm2/s is 1500 J/cm2, half above what passes unasked
        Arguments.of(pulsed(100, 40, 0.6, new HandPass(10, 2)), Knob.DOSE));
  }

  @ParameterizedTest
  @MethodSource("slips")
  void a_slip_of_the_pen_is_doubted_once_or_with_its_consequence(Settings settings, Knob knob) {
    assertThat(knobs(Plausibility.about(HERON, settings, NOON))).containsExactly(knob);
  }

  /** Whatever its definition: 15 mm at half maximum would be 25.5 mm at 1/e2. */
  @ParameterizedTest
  @CsvSource({"15, ''", "25, Spot diameter of 25 mm is"})
  void a_spot_is_judged_by_the_number_on_the_meter(double diameter, String sentence) {
    Settings settings =
        new Settings(
            PowerSetting.percent(100),
            new HandPass(60, 5),
            new Spot(diameter, SpotDefinition.FULL_WIDTH_HALF_MAXIMUM),
            Optional.of(new Pulses(1, OptionalDouble.empty())));
    assertThat(
            Plausibility.about(HERON, settings, NOON).stream()
                .map(Plausibility.Doubt::sentence)
                .collect(Collectors.joining()))
        .startsWith(sentence)
        .hasSizeLessThan(sentence.isEmpty() ? 1 : 200);
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

  private static Rig rig(
      Emission emission, double watts, double nanometres, double spot, double ns, double width) {
    return RigBuilder.heron(new UUID(0, 1))
        .emission(emission)
        .ratedWatts(watts)
        .wavelengthNanometres(nanometres)
        .spotMillimetres(spot)
        .pulseNanoseconds(ns)
        .scanWidthMillimetres(width)
        .build();
  }

  @Test
  void every_figure_of_a_rig_is_looked_at() {
    assertThat(Plausibility.about(rig(Emission.PULSED, 300, 1064, 0.6, 100, 60))).isEmpty();
    assertThat(Plausibility.about(rig(Emission.CONTINUOUS, 3000, 1070, 0.6, 100, 60))).isEmpty();
    assertThat(knobs(Plausibility.about(rig(Emission.PULSED, 3000, 1.064, 60, 0.1, 600))))
        .containsExactly(Knob.PULSED_POWER, Knob.WAVELENGTH, Knob.SPOT, Knob.PULSE, Knob.WIDTH);
    assertThat(knobs(Plausibility.about(rig(Emission.CONTINUOUS, 30, 1070, 0.6, 100, 60))))
        .containsExactly(Knob.CONTINUOUS_POWER);
  }

  @ParameterizedTest
  @CsvSource({"49.9, true", "50, false", "100, false", "120, false", "120.1, true"})
  void a_metered_power_far_from_the_rating_either_way_is_doubted(double percent, boolean doubted) {
    Rig rig = rig(Emission.PULSED, 300, 1064, 0.6, 100, 60);
    PowerCheck check =
        new PowerCheck(
            new UUID(0, 2),
            OffsetDateTime.parse("2026-06-01T12:00:00+02:00"),
            50,
            150 * percent / 100);
    assertThat(MeteredPlausibility.about(check, rig)).hasSize(doubted ? 1 : 0);
  }

  private static PowerCheck check(int id, int days, double percent, double watts) {
    return new PowerCheck(new UUID(0, id), NOON.plusDays(days), percent, watts);
  }

  private static Rig with(PowerCheck... checks) {
    return RigBuilder.heron(new UUID(0, 1)).checks(List.of(checks)).build();
  }

  private static List<String> sentences(List<Plausibility.Doubt> doubts) {
    return doubts.stream().map(Plausibility.Doubt::sentence).toList();
  }

  /** The slip that this catches: metered at 60 %, the setting left at 100 %. */
  @Test
  void a_check_whose_setting_was_forgotten_is_asked_about() {
    assertThat(sentences(MeteredPlausibility.about(check(2, 0, 100, 114), with())))
        .containsExactly(
            "114 W at 100 % is 57 % of what Heron should give; check both numbers, or say that you"
                + " are sure.");
    assertThat(
            sentences(MeteredPlausibility.about(check(3, 9, 100, 140), with(check(2, 0, 95, 180)))))
        .containsExactly(
            "140 W at 100 % is 73.9 % of what Heron should give, as metered on 2026-06-01; check"
                + " both numbers, or say that you are sure.");
    assertThat(MeteredPlausibility.about(check(2, 0, 30, 48), with())).isEmpty();
    assertThat(MeteredPlausibility.about(check(3, 0, 100, 196), with(check(2, 0, 30, 48))))
        .isEmpty();
  }

  @Test
  void power_that_falls_while_the_setting_rises_is_asked_about() {
    assertThat(
            sentences(MeteredPlausibility.about(check(3, 0, 60, 110), with(check(2, 0, 50, 112)))))
        .containsExactly(
            "Power must rise with the setting, and 110 W at 60 % is not more than 112 W at 50 %;"
                + " check both numbers, or say that you are sure.");
    assertThat(MeteredPlausibility.about(check(3, 9, 52, 110), with(check(2, 0, 50, 112))))
        .isEmpty();
  }

  /** 200 W at 5 kHz is 40 mJ a pulse. */
  @Test
  void a_pulse_above_the_largest_of_the_rig_is_asked_about() {
    Settings settings = pulsed(100, 5, 1.5, new HandPass(60, 18));
    Rig capped = RigBuilder.heron(new UUID(0, 1)).largestPulseMillijoules(10).build();
    assertThat(sentences(Plausibility.about(capped, settings, NOON)))
        .containsExactly(
            "A pulse of 40 mJ (200 W at 5 kHz) is more than rig Heron gives (10 mJ); lower the"
                + " power or raise the repetition rate, or say that you are sure.");
    assertThat(Plausibility.about(with(), settings, NOON)).isEmpty();
    assertThat(Plausibility.about(capped, pulsed(25, 5, 1.5, new HandPass(60, 18)), NOON))
        .isEmpty();
  }

  @Test
  void more_watts_than_the_rig_gives_are_asked_about() {
    assertThat(sentences(Plausibility.about(HERON, usualWith(PowerSetting.watts(350), 100), NOON)))
        .containsExactly(
            "Power of 350 W is more than rig Heron gives (300 W at 100 %); correct it, or say that"
                + " you are sure.");
  }
}
