package charline.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import charline.exposure.HandPass;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.SpotDefinition;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PatchTest {
  private static final Optional<Pulses> NO_PULSES = Optional.empty();

  private static final OffsetDateTime NOON = OffsetDateTime.parse("2026-06-01T12:00:00+02:00");

  private static Reading reading(int passes, String outcome, String note) {
    return new Reading(
        new UUID(0, passes),
        passes,
        Outcome.parse(outcome),
        Optional.empty(),
        OptionalDouble.empty(),
        NOON,
        Optional.empty(),
        Optional.ofNullable(note));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3})
  void passes_must_rise(int passes) {
    assertThatThrownBy(
            () ->
                Patch.requireFollows(
                    "P-0007", reading(3, "residue", null), reading(passes, "clean", null)))
        .hasMessage(
            "Passes on P-0007 must rise: the last reading was after 3, this one says %d; amend the earlier reading if it was wrong."
                .formatted(passes));
  }

  @Test
  void char_does_not_turn_clean_without_a_note() {
    assertThatThrownBy(
            () ->
                Patch.requireFollows("P-0007", reading(2, "char", null), reading(3, "clean", null)))
        .hasMessage(
            "Char on P-0007 after 2 passes cannot be gone after 3 without a note; say in a note"
                + " what happened, or amend the earlier reading.");
    Patch.requireFollows(
        "P-0007", reading(2, "char", null), reading(3, "clean", "was soot after all"));
    Patch.requireFollows("P-0007", reading(2, "char", null), reading(3, "char+residue", null));
  }

  @Test
  void an_outcome_is_clean_alone_or_any_of_the_others() {
    assertThat(Outcome.parse("residue, char").text()).isEqualTo("char+residue");
    assertThat(Outcome.parse("tint").cleared(false)).isFalse();
    assertThat(Outcome.parse("tint").cleared(true)).isTrue();
    assertThat(Outcome.parse("burnt, residue").text()).isEqualTo("char+residue");
    assertThat(Outcome.parse("char").cleared(false)).isTrue();
    assertThatThrownBy(() -> Outcome.parse("clean+char"))
        .hasMessage("Clean must be the only mark of an outcome; it came with char.");
    assertThatThrownBy(() -> Outcome.parse("browned"))
        .hasMessage("An outcome is clean, or tint, char and residue joined by +, not \"browned\".");
    assertThatThrownBy(() -> Outcome.parse(" "))
        .hasMessage("An outcome must name clean, tint, char or residue; nothing was given.");
  }

  private static Coat coat(Tone tone, OptionalDouble micrometres) {
    return new Coat("latex", Optional.of(tone), micrometres);
  }

  private static Finish finish(Coat... coats) {
    return new Finish(new UUID(0, 4), "white over grey", "latex", List.of(coats));
  }

  @Test
  void a_stack_has_the_tone_of_its_outermost_coat_and_a_thickness_if_every_coat_has() {
    Coat white = coat(Tone.PALE, OptionalDouble.of(90));
    Finish known = finish(white, coat(Tone.DARK, OptionalDouble.of(60)));
    assertThat(known.tone()).contains(Tone.PALE);
    assertThat(known.thicknessMicrometres()).hasValue(150);
    assertThat(finish(white, coat(Tone.DARK, OptionalDouble.empty())).thicknessMicrometres())
        .isEmpty();
  }

  private static Rig rig(double nanometres, PowerCheck... checks) {
    return RigBuilder.heron(new UUID(0, 1))
        .bare()
        .named("shop-200")
        .wavelengthNanometres(nanometres)
        .checks(List.of(checks))
        .build();
  }

  /** A data sheet that says 1063.6 nm and one that says 1064 mean the same light. */
  @Test
  void light_is_told_apart_by_whole_nanometres() {
    Board board =
        new Board(
            new UUID(0, 5),
            "offcut",
            "pine",
            WoodForm.SOLID,
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty());
    Settings settings =
        new Settings(
            PowerSetting.percent(60),
            new HandPass(60, 18),
            new Spot(0.6, SpotDefinition.ONE_OVER_E_SQUARED),
            Optional.of(new Pulses(40, OptionalDouble.empty())));
    assertThat(
            Stratum.of(
                    new Patch(
                        new UUID(0, 6),
                        "P-0007",
                        NOON,
                        rig(1063.6),
                        board,
                        finish(),
                        settings,
                        OptionalDouble.empty(),
                        List.of(reading(1, "clean", null))))
                .words())
        .isEqualTo("latex on pine, pulsed 1064 nm");
  }

  @Test
  void no_power_is_metered_above_the_dial() {
    assertThatThrownBy(() -> new PowerCheck(new UUID(0, 2), NOON, 101, 190))
        .hasMessage("Power setting must be between 0 and 100 %, not 101 %.");
  }

  @Test
  void delivered_power_follows_the_latest_check_on_or_before_the_moment() {
    Rig rig =
        rig(
            1064,
            new PowerCheck(new UUID(0, 3), NOON.plusDays(20), 50, 80),
            new PowerCheck(new UUID(0, 2), NOON, 100, 190));
    PowerSetting sixty = PowerSetting.percent(60);
    assertThat(rig.deliveredWatts(sixty, NO_PULSES, NOON.minusSeconds(1)))
        .isCloseTo(120, within(1e-9));
    assertThat(rig.deliveredWatts(sixty, NO_PULSES, NOON)).isCloseTo(114, within(1e-9));
    assertThat(rig.deliveredWatts(sixty, NO_PULSES, NOON.plusDays(19)))
        .isCloseTo(114, within(1e-9));
    assertThat(rig.deliveredWatts(sixty, NO_PULSES, NOON.plusDays(20))).isCloseTo(96, within(1e-9));
    assertThat(rig.deliveredWatts(PowerSetting.watts(77), NO_PULSES, NOON)).isEqualTo(77);
  }

  @Test
  void checks_of_one_day_are_interpolated_over_the_setting() {
    Rig rig =
        rig(
            1064,
            new PowerCheck(new UUID(0, 2), NOON, 30, 48),
            new PowerCheck(new UUID(0, 3), NOON.plusMinutes(5), 100, 196));
    OffsetDateTime later = NOON.plusDays(1);
    assertThat(rig.deliveredWatts(PowerSetting.percent(30), NO_PULSES, later))
        .isCloseTo(48, within(1e-9));
    assertThat(rig.deliveredWatts(PowerSetting.percent(100), NO_PULSES, later))
        .isCloseTo(196, within(1e-9));
    assertThat(rig.deliveredWatts(PowerSetting.percent(65), NO_PULSES, later))
        .isCloseTo(122, within(1e-9));
    assertThat(rig.deliveredWatts(PowerSetting.percent(15), NO_PULSES, later))
        .isCloseTo(24, within(1e-9));
  }

  private static PowerCheck pulsedCheck(int id, OffsetDateTime at, double watts, double kHz) {
    return new PowerCheck(
        new UUID(0, id), at, 100, watts, OptionalDouble.of(kHz), OptionalDouble.empty());
  }

  private static Optional<Pulses> at(double kilohertz) {
    return Optional.of(new Pulses(kilohertz, OptionalDouble.empty()));
  }

  @Test
  void of_the_latest_day_the_checks_at_the_nearest_rate_count() {
    Rig rig =
        rig(
            1064,
            pulsedCheck(2, NOON.minusDays(9), 120, 20),
            pulsedCheck(3, NOON, 150, 20),
            pulsedCheck(4, NOON, 190, 60));
    PowerSetting full = PowerSetting.percent(100);
    assertThat(rig.deliveredWatts(full, at(20), NOON)).isEqualTo(150);
    assertThat(rig.deliveredWatts(full, at(30), NOON)).isEqualTo(150);
    assertThat(rig.deliveredWatts(full, at(40), NOON)).isEqualTo(190);
    assertThat(rig.deliveredWatts(full, at(80), NOON)).isEqualTo(190);
    assertThat(rig.checksFor(at(30), NOON))
        .singleElement()
        .satisfies(check -> assertThat(rig.meteredOtherwise(check, at(30))).isTrue());
    assertThat(rig.checksFor(at(20), NOON))
        .singleElement()
        .satisfies(check -> assertThat(rig.meteredOtherwise(check, at(20))).isFalse());
  }

  /** A check that names no pulses was made with the rig's usual 40 kHz. */
  @Test
  void a_check_without_pulses_was_made_with_the_usual_ones() {
    Rig rig =
        RigBuilder.heron(new UUID(0, 9))
            .checks(
                List.of(
                    new PowerCheck(new UUID(0, 2), NOON, 100, 190), pulsedCheck(3, NOON, 120, 5)))
            .build();
    PowerSetting full = PowerSetting.percent(100);
    assertThat(rig.deliveredWatts(full, at(40), NOON)).isEqualTo(190);
    assertThat(rig.deliveredWatts(full, at(6), NOON)).isEqualTo(120);
  }

  /** USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a and chapter 4: white oak 0.68 x 1120. */
  @Test
  void density_follows_from_specific_gravity() {
    WoodFacts oak =
        new WoodFacts(
            "white oak",
            List.of(),
            Optional.of("oak"),
            "hardwood",
            OptionalDouble.of(0.68),
            "ring",
            "",
            "handbook",
            Optional.empty());
    assertThat(oak.densityKilogramsPerCubicMetre().orElseThrow()).isCloseTo(761.600, within(5e-4));
  }
}
