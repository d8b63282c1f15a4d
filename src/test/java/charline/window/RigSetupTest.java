package charline.window;

import static charline.trial.Pieces.NOON;
import static charline.trial.Pieces.board;
import static charline.trial.Pieces.finish;
import static charline.trial.Pieces.patch;
import static charline.trial.Pieces.reading;
import static charline.trial.Pieces.rig;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.exposure.DoseForm;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.SpotDefinition;
import charline.exposure.TimedArea;
import charline.trial.Patch;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import charline.trial.RigBuilder;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Which rig and which fixed knobs an answer is for, and what they make of power and speed. */
class RigSetupTest {
  private static final Rig HERON = rig(1, "Heron", 200);
  private static final Rig TERN = rig(2, "Tern", 300);

  private static Patch burned(int number, Rig rig, double spot, double kilohertz, DoseForm form) {
    Settings settings =
        new Settings(
            PowerSetting.percent(50),
            form,
            new Spot(spot, SpotDefinition.ONE_OVER_E_SQUARED),
            Optional.of(new Pulses(kilohertz, OptionalDouble.of(100))));
    return patch(
        number, rig, board(1, "pine"), finish(1, "latex"), settings, reading(1, "residue"));
  }

  private static Patch burned(int number, Rig rig) {
    return burned(number, rig, 0.6, 40, new HandPass(60, 20));
  }

  @Test
  void the_rig_of_most_patches_is_meant_and_of_two_alike_the_later() {
    assertThat(RigSetup.mostUsedRig(List.of(burned(1, HERON), burned(2, HERON), burned(3, TERN))))
        .isEqualTo(HERON);
    assertThat(RigSetup.mostUsedRig(List.of(burned(1, HERON), burned(2, TERN)))).isEqualTo(TERN);
  }

  @Test
  void fixed_knobs_are_those_of_most_patches_of_the_rig_itself() {
    HandPass wide = new HandPass(80, 20);
    RigSetup bench =
        RigSetup.of(
            HERON,
            List.of(
                burned(1, HERON, 0.8, 50, wide),
                burned(2, HERON, 0.8, 50, wide),
                burned(3, HERON),
                burned(4, TERN),
                burned(5, TERN),
                burned(6, TERN)),
            NOON);
    assertThat(bench.spot().diameterMillimetres()).isEqualTo(0.8);
    assertThat(bench.pulses().orElseThrow().repetitionKilohertz()).isEqualTo(50);
    assertThat(bench.speed()).isEqualTo(new SpeedKnob(SpeedKnob.Kind.HAND, 80));
  }

  @Test
  void a_rig_that_burned_none_of_the_patches_has_its_own_usual_settings() {
    RigSetup bench =
        RigSetup.of(TERN, List.of(burned(1, HERON, 0.8, 50, new HandPass(80, 20))), NOON);
    assertThat(bench.spot().diameterMillimetres()).isEqualTo(0.6);
    assertThat(bench.pulses().orElseThrow().repetitionKilohertz()).isEqualTo(40);
    assertThat(bench.speed()).isEqualTo(new SpeedKnob(SpeedKnob.Kind.HAND, 60));
  }

  @Test
  void lines_keep_their_spacing_and_a_timed_area_is_gone_over_by_the_rigs_scan_width() {
    assertThat(
            RigSetup.of(HERON, List.of(burned(1, HERON, 0.6, 40, new LineScan(5000, 0.1))), NOON)
                .speed())
        .isEqualTo(new SpeedKnob(SpeedKnob.Kind.SCAN, 0.1));
    assertThat(
            RigSetup.of(HERON, List.of(burned(1, HERON, 0.6, 40, new TimedArea(25, 4))), NOON)
                .speed())
        .isEqualTo(new SpeedKnob(SpeedKnob.Kind.HAND, 60));
  }

  @Test
  void a_dose_and_an_intensity_find_the_speed_and_the_power_that_give_them() {
    Rig weaker = rig(1, "Heron", 200, new PowerCheck(new UUID(9, 1), NOON, 100, 180));
    RigSetup bench = RigSetup.usual(weaker, NOON);
    assertThat(bench.watts(1)).isCloseTo(1.8, within(1e-12));
    double speed = bench.speedForDose(50, 10);
    assertThat(bench.exposure(50, speed).doseJoulesPerCm2()).isCloseTo(10, within(1e-9));
    double power = bench.powerForIntensity(0.5);
    assertThat(bench.exposure(power, 20).intensity()).isCloseTo(0.5, within(1e-9));
    for (SpeedKnob knob :
        List.of(new SpeedKnob(SpeedKnob.Kind.HAND, 60), new SpeedKnob(SpeedKnob.Kind.SCAN, 0.1))) {
      assertThat(knob.speedFor(knob.at(700).areaRate().squareCentimetresPerSecond()))
          .isCloseTo(700, within(1e-9));
    }
  }

  /** 48 W at 30 %, 196 W at 100 %: 122 W at 65 %, and back. */
  @Test
  void powers_and_doses_follow_the_metered_curve_both_ways() {
    Rig metered =
        rig(
            1,
            "Heron",
            200,
            new PowerCheck(new UUID(9, 1), NOON, 30, 48),
            new PowerCheck(new UUID(9, 2), NOON, 100, 196));
    RigSetup bench = RigSetup.usual(metered, NOON);
    assertThat(bench.watts(30)).isEqualTo(48);
    assertThat(bench.exposure(65, 20).doseJoulesPerCm2())
        .isCloseTo(122 / (6 * 2.0), within(1e-9)); // W over cm by cm/s
    assertThat(bench.percent(122)).isCloseTo(65, within(1e-9));
    double power = bench.powerForIntensity(bench.intensity(65));
    assertThat(power).isCloseTo(65, within(1e-9));
    assertThat(bench.exposure(power, bench.speedForDose(power, 10)).doseJoulesPerCm2())
        .isCloseTo(10, within(1e-9));
  }

  /** Of 4 mJ at 40 kHz come 160 W, of 2.5 mJ 100 W. */
  @Test
  void the_largest_pulse_energy_bounds_the_power_on_the_dial() {
    Rig capped = RigBuilder.like(HERON).largestPulseMillijoules(4).build();
    assertThat(RigSetup.usual(capped, NOON).highestPercent()).isCloseTo(80, within(1e-9));
    assertThat(RigSetup.usual(HERON, NOON).highestPercent()).isEqualTo(100);
    Rig roomy = RigBuilder.like(HERON).largestPulseMillijoules(40).build();
    assertThat(RigSetup.usual(roomy, NOON).highestPercent()).isEqualTo(100);
  }
}
