package charline.model;

import static charline.trial.Pieces.board;
import static charline.trial.Pieces.finish;
import static charline.trial.Pieces.patch;
import static charline.trial.Pieces.reading;
import static charline.trial.Pieces.rig;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.exposure.HandPass;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.SpotDefinition;
import charline.trial.Coat;
import charline.trial.Finish;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.trial.Rig;
import charline.trial.Stratum;
import charline.trial.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which patches are compared, which deny the model, and how likely that is by chance. */
class ContradictionsTest {
  private static final Rig HERON = rig(1, "Heron", 200);
  private static final Finish BARE = finish(1, "latex");
  private static final Finish PALE = finish(2, "latex", coat(Tone.PALE));
  private static final Finish DARK = finish(3, "latex", coat(Tone.DARK));

  private final List<Patch> patches = new ArrayList<>();

  private static Coat coat(Tone tone) {
    return new Coat("latex", Optional.of(tone), OptionalDouble.empty());
  }

  private void burn(double dose, double percent, Finish finish, Reading... readings) {
    Settings settings =
        new Settings(
            PowerSetting.percent(percent),
            new HandPass(60, 100 * 2 * percent / (60 * dose)),
            new Spot(0.6, SpotDefinition.ONE_OVER_E_SQUARED),
            Optional.of(new Pulses(40, OptionalDouble.empty())));
    patches.add(patch(patches.size() + 1, HERON, board(1, "pine"), finish, settings, readings));
  }

  private void burn(int count, double dose, String outcome) {
    for (int k = 0; k < count; k++) {
      burn(dose, 50, BARE, reading(1, outcome));
    }
  }

  private Contradictions in(Event event) {
    return Contradictions.in(new Trials(Stratum.of(patches.get(0)), patches, false), event);
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          11.1, 50, 1
          10.9, 50, 0
          11.1, 60, 1
          11.1, 40, 0
          """)
  void a_patch_is_hotter_with_a_tenth_more_dose_at_no_less_fluence(
      double dose, double percent, int agreeing) {
    burn(10, 50, BARE, reading(1, "residue"));
    burn(dose, percent, BARE, reading(1, "clean"));
    assertThat(in(Event.CLEARING).agreeing()).isEqualTo(agreeing);
    assertThat(in(Event.CLEARING).denying()).isZero();
  }

  /** A fifth more power with only a tenth more dose is a faster hand, which may char less. */
  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          11.1, 50, 1
          10.9, 50, 0
          11.9, 60, 0
          12.1, 60, 1
          11.1, 40, 0
          """)
  void for_char_it_also_has_as_much_more_dose_as_fluence(
      double dose, double percent, int agreeing) {
    burn(10, 50, BARE, reading(1, "residue"));
    burn(dose, percent, BARE, reading(1, "char"));
    assertThat(in(Event.CHAR).agreeing()).isEqualTo(agreeing);
    assertThat(in(Event.CHAR).denying()).isZero();
  }

  @Test
  void an_event_came_sooner_only_if_the_other_patch_was_seen_without_it_as_late() {
    burn(10, 50, BARE, reading(1, "residue"), reading(2, "residue"));
    burn(20, 50, BARE, reading(1, "residue"), reading(2, "char"));
    assertThat(in(Event.CHAR).agreeing()).isEqualTo(1);
    patches.clear();
    burn(10, 50, BARE, reading(1, "residue"), reading(3, "char"));
    burn(20, 50, BARE, reading(1, "residue"), reading(2, "char"));
    assertThat(in(Event.CHAR).agreeing()).isZero();
  }

  @Test
  void a_hotter_patch_under_a_coat_that_is_harder_to_lift_is_not_compared() {
    burn(10, 50, DARK, reading(1, "clean"));
    burn(20, 50, PALE, reading(1, "residue"));
    assertThat(in(Event.CLEARING).denying()).isZero();
    patches.clear();
    burn(10, 50, PALE, reading(1, "clean"));
    burn(20, 50, DARK, reading(1, "residue"));
    assertThat(in(Event.CLEARING).denying()).isEqualTo(1);
  }

  /**
   * Of all ways to deal n outcomes of either kind to n hot and n cool patches one is as bad as all
   * turned round: 1 in 6 for two and two, 1 in 70 for four and four (binomial coefficients; from
   * 999 deals, so within four of their standard deviations).
   */
  @ParameterizedTest
  @CsvSource({"2, 6, false", "4, 70, true"})
  void the_tail_is_the_share_of_deals_that_deny_as_much(int n, int ways, boolean decisive) {
    burn(n, 20, "residue");
    burn(n, 10, "char");
    double chance = 1.0 / ways;
    assertThat(in(Event.CHAR).denying()).isEqualTo(n * n);
    assertThat(in(Event.CHAR).tail())
        .isCloseTo(chance, within(4 * Math.sqrt(chance * (1 - chance) / 999)));
    assertThat(in(Event.CHAR).decisive()).isEqualTo(decisive);
  }

  /** One deal of 184,756: only the one that was seen, of a thousand. */
  @Test
  void the_deal_that_was_seen_counts_too() {
    burn(10, 20, "residue");
    burn(10, 10, "char");
    assertThat(in(Event.CHAR).tail()).isEqualTo(0.001);
  }

  @Test
  void three_pairs_or_as_many_that_agree_deny_nothing() {
    burn(1, 20, "residue");
    burn(3, 10, "char");
    assertThat(in(Event.CHAR).denying()).isEqualTo(3);
    assertThat(in(Event.CHAR).tail()).isEqualTo(1);
    patches.clear();
    burn(2, 10, "char");
    burn(2, 20, "residue");
    burn(2, 40, "char");
    assertThat(in(Event.CHAR).denying()).isEqualTo(in(Event.CHAR).agreeing()).isEqualTo(4);
    assertThat(in(Event.CHAR).tail()).isEqualTo(1);
  }
}
