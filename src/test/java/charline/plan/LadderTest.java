package charline.plan;

import static charline.trial.Pieces.board;
import static charline.trial.Pieces.finish;
import static charline.trial.Pieces.patch;
import static charline.trial.Pieces.reading;
import static charline.trial.Pieces.rig;
import static org.assertj.core.api.Assertions.assertThat;

import charline.exposure.HandPass;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.SpotDefinition;
import charline.trial.Patch;
import charline.trial.Reading;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Where the ladder stands after given trials: common practice, no published source. */
class LadderTest {
  private static final double LN_FIRST = Math.log(3);

  /** A patch of 100 W at a dose of one pass in J/cm2. */
  private static Patch burned(double dose, Reading... readings) {
    return patch(
        1,
        rig(1, "Heron", 200),
        board(1, "pine"),
        finish(1, "latex"),
        new Settings(
            PowerSetting.percent(50),
            new HandPass(60, 100 * 100 / (60 * dose)),
            new Spot(0.6, SpotDefinition.ONE_OVER_E_SQUARED),
            Optional.of(new Pulses(40, OptionalDouble.empty()))),
        readings);
  }

  private static double lnIntensity(Patch patch) {
    return Math.log(patch.exposure().intensity());
  }

  private static boolean permits(Ladder ladder, double dose, double lnIntensity) {
    return ladder.permits(Math.log(dose), lnIntensity);
  }

  @Test
  void the_next_rung_is_a_quarter_more_of_dose_and_of_fluence_each_for_itself() {
    Patch unharmed = burned(10, reading(1, "residue"));
    double lnIntensity = lnIntensity(unharmed);
    Ladder ladder = Ladder.of(List.of(unharmed), List.of(unharmed), () -> LN_FIRST);
    assertThat(permits(ladder, 12.5, lnIntensity + Math.log(1.25))).isTrue();
    assertThat(permits(ladder, 12.6, lnIntensity)).isFalse();
    assertThat(permits(ladder, 1, lnIntensity + Math.log(1.26))).isFalse();
  }

  @Test
  void a_patch_that_charred_later_was_safe_at_one_pass_and_one_charred_at_once_was_not() {
    Patch later = burned(10, reading(1, "residue"), reading(2, "char"));
    Patch atOnce = burned(20, reading(1, "char"));
    Ladder ladder = Ladder.of(List.of(later, atOnce), List.of(later, atOnce), () -> LN_FIRST);
    assertThat(permits(ladder, 12.5, lnIntensity(later))).isTrue();
    assertThat(permits(ladder, 20, lnIntensity(later))).isFalse();
  }

  @Test
  void where_all_charred_at_once_the_first_rung_lies_three_steps_below_the_coolest() {
    List<Patch> charred = List.of(burned(5, reading(1, "char")), burned(9, reading(1, "char")));
    Ladder ladder = Ladder.of(charred, charred, () -> LN_FIRST);
    double first = 5 / Math.pow(1.25, 3);
    assertThat(permits(ladder, first, 0)).isTrue();
    assertThat(permits(ladder, 1.01 * first, 0)).isFalse();
    List<Patch> hot = List.of(burned(50, reading(1, "char")));
    assertThat(permits(Ladder.of(hot, hot, () -> LN_FIRST), 3.01, 0)).isFalse();
  }

  @Test
  void a_rig_that_burned_nothing_begins_two_steps_below_what_another_did_unharmed() {
    Patch unharmed = burned(10, reading(1, "residue"));
    Ladder ladder = Ladder.of(List.of(unharmed), List.of(), () -> LN_FIRST);
    double first = 10 / Math.pow(1.25, 2);
    assertThat(permits(ladder, first, lnIntensity(unharmed))).isTrue();
    assertThat(permits(ladder, 1.01 * first, lnIntensity(unharmed))).isFalse();
  }
}
