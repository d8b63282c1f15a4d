package charline.answer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import charline.exposure.Emission;
import charline.model.Event;
import charline.model.LogNormalSpread;
import charline.model.Prior;
import charline.model.Trials;
import charline.model.borrow.Kin;
import charline.model.borrow.Prediction.Backing;
import charline.pooling.Yard;
import charline.refusal.Refusal;
import charline.shops.Law;
import charline.shops.ShopBench;
import charline.trial.Coat;
import charline.trial.Patch;
import charline.wording.Json;
import charline.wording.PriorFileText;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Priors that the strata of an invented log teach, whose truth is known. */
class LogPriorsTest {
  private static final double LN_CHAR = 3.2;
  private static final double LN_CLEAR = 2.1;

  private static List<Patch> burn(String family, String wood, double step, int patches, long seed) {
    Law charring = ShopBench.law(LN_CHAR + step, 0.45, 0.55, 0.2, 0.15);
    Law clearing = ShopBench.law(LN_CLEAR + step, 0.7, 0.75, 0.2, 0.15);
    Coat coat = new Coat(family, Optional.empty(), OptionalDouble.empty());
    Trials burned =
        Yard.burn(
            new Yard.Job(family, wood, charring, clearing, Map.of(), patches, 3),
            (patch, board) -> coat,
            new Random(seed));
    return burned.patches();
  }

  @SafeVarargs
  private static LogFitter log(List<Patch>... strata) {
    List<Patch> all = new ArrayList<>();
    for (List<Patch> each : strata) {
      all.addAll(each);
    }
    return new LogFitter(new Strata(all));
  }

  private static LogFitter five() {
    return log(
        burn("latex", "pine", 0.1, 18, 1),
        burn("latex", "oak", -0.1, 18, 2),
        burn("latex", "ash", 0, 18, 3),
        burn("alkyd", "larch", 0.1, 18, 4),
        burn("varnish", "larch", -0.1, 18, 5));
  }

  private static Prior usual(Event event) {
    return Prior.usual(event, Emission.PULSED);
  }

  @ParameterizedTest
  @EnumSource(Event.class)
  void strata_that_agree_give_a_narrow_prior_about_the_truth(Event event) {
    LogPriors learned = five().priors(Kin.EVERYBODY);
    Prior prior = learned.set().of(event, Emission.PULSED);

    assertThat(prior.tau().sd()).isLessThan(usual(event).tau().sd() / 3);
    assertThat(prior.tau().mean())
        .isCloseTo(event == Event.CHAR ? LN_CHAR : LN_CLEAR, within(2 * prior.tau().sd()));
    assertThat(learned.backing(PriorLine.DOSE, event, Emission.PULSED))
        .isEqualTo(new Backing(5, 90));
    assertThat(learned.backing(PriorLine.OMEGA, event, Emission.CONTINUOUS).strata()).isEqualTo(5);
    assertThat(prior.omega()).isInstanceOf(LogNormalSpread.class);
    assertThat(prior.atMicrometres()).isEqualTo(usual(event).atMicrometres());
    // Nothing was burned under continuous light.
    assertThat(learned.set().of(event, Emission.CONTINUOUS).tau())
        .isEqualTo(Prior.usual(event, Emission.CONTINUOUS).tau());
    assertThat(learned.backing(PriorLine.DOSE, event, Emission.CONTINUOUS)).isEqualTo(Backing.NONE);
  }

  @ParameterizedTest
  @EnumSource(Event.class)
  void one_stratum_of_few_patches_gives_nearly_the_usual_priors(Event event) {
    Prior prior =
        log(burn("latex", "pine", 0, 8, 1)).priors(Kin.EVERYBODY).set().of(event, Emission.PULSED);
    Prior usual = usual(event);

    assertThat(prior.tau().sd() / usual.tau().sd()).isBetween(0.5, 1.2);
    assertThat(prior.phi().sd() / usual.phi().sd()).isBetween(0.5, 1.2);
    assertThat(prior.psi().sd() / usual.psi().sd()).isBetween(0.5, 1.2);
    assertThat(prior.lnSigma().sd() / usual.lnSigma().sd()).isBetween(0.5, 1.2);
    assertThat(Math.abs(prior.tau().mean() - usual.tau().mean())).isLessThan(usual.tau().sd());
  }

  /** A prior in a file has no usual one beside it that could save those who are unlike. */
  @Test
  void strata_that_contradict_each_other_give_a_prior_as_wide_as_they_differ() {
    Prior agreeing = five().priors(Kin.EVERYBODY).set().of(Event.CLEARING, Emission.PULSED);
    Prior apart =
        log(
                burn("latex", "pine", 0.9, 18, 1),
                burn("latex", "oak", -0.9, 18, 2),
                burn("latex", "ash", 0.9, 18, 3),
                burn("alkyd", "larch", -0.9, 18, 4))
            .priors(Kin.EVERYBODY)
            .set()
            .of(Event.CLEARING, Emission.PULSED);

    assertThat(agreeing.tau().sd()).isLessThan(0.5);
    assertThat(apart.tau().sd()).isGreaterThan(0.9);
  }

  @Test
  void trials_of_the_family_that_is_named_count_most() {
    LogFitter log =
        log(
            burn("latex", "pine", 0.6, 18, 1),
            burn("latex", "oak", 0.6, 18, 2),
            burn("alkyd", "larch", -0.6, 18, 3),
            burn("alkyd", "ash", -0.6, 18, 4));

    assertThat(middle(log, new Kin(Optional.of("latex"), List.of())))
        .isGreaterThan(middle(log, new Kin(Optional.of("alkyd"), List.of())) + 0.2);
  }

  private static double middle(LogFitter log, Kin kin) {
    return log.priors(kin).set().of(Event.CLEARING, Emission.PULSED).tau().mean();
  }

  @Test
  void the_file_read_back_pins_the_same_numbers() {
    LogPriors learned =
        log(burn("latex", "pine", 0, 12, 1), burn("latex", "oak", 0, 12, 2)).priors(Kin.EVERYBODY);
    Priors read =
        PriorFile.read(PriorFileText.of(learned, "use it").lines().toList(), Path.of("shop"));

    assertThat(read.pinned()).isTrue();
    assertThat(read.set())
        .usingRecursiveComparison()
        .withEqualsForType((a, b) -> Math.abs(a - b) < 1e-4, Double.class)
        .isEqualTo(learned.set());
    assertThat(learned.set()).isNotEqualTo(Priors.USUAL.set());
  }

  @Test
  void every_line_says_how_many_strata_and_patches_it_rests_on() {
    LogPriors learned =
        log(burn("latex", "pine", 0, 12, 1), burn("latex", "oak", 0, 12, 2)).priors(Kin.EVERYBODY);

    assertThat(PriorFileText.of(learned, "use it").replaceAll("\\s+# |\\s+", " "))
        .contains("the usual prior, moved by 2 strata with 24 patches; as wide as one more stratum")
        .contains("no stratum says more than the usual: beech under a continuous 10.6 um laser")
        .contains("pulsed: learned at 1064 nm; the middle of the trials lay ");
    assertThat(Json.text(PriorFileText.json(learned)))
        .contains("\"strata\" : 2", "\"patches\" : 24", "\"wavelength_nm\" : 1064");
  }

  /** Names may hold anything, also what a line of the file might. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "Mrs O'Hara's lake house",
        "char dose = 1 x/ 2 # Lindqvist",
        "Żółw & Söhne \"Nr. 7\"",
        "2026-03-04T10:00 Ada, 12 Quay Street"
      })
  void no_name_of_the_log_is_in_the_file(String name) {
    List<Patch> patches = burn(name, name + " wood", 0, 8, 1);
    LogPriors learned = log(patches).priors(new Kin(Optional.of(name), List.of(name + " wood")));

    for (String text :
        List.of(PriorFileText.of(learned, "use it"), Json.text(PriorFileText.json(learned)))) {
      assertThat(text).doesNotContain(name);
      for (Patch patch : patches) {
        assertThat(text)
            .doesNotContain(patch.code(), patch.board().name(), patch.finish().name())
            .doesNotContain(patch.rig().name())
            .doesNotContain(patch.burnedAt().toLocalDate().toString());
      }
    }
  }

  @Test
  void a_log_with_nothing_to_say_is_refused() {
    assertThatThrownBy(() -> log().priors(Kin.EVERYBODY))
        .isInstanceOf(Refusal.class)
        .hasMessage(
            "The log has no patches yet, so no priors can be learned from it; record test patches"
                + " first.");
    assertThatThrownBy(() -> log(burn("latex", "pine", 6, 1, 1)).priors(Kin.EVERYBODY))
        .isInstanceOf(Refusal.class)
        .hasMessageStartingWith("No priors can be learned from the log's 1 patch yet; it takes 3 ");
    assertThatThrownBy(
            () ->
                log(burn("latex", "pine", 0, 4, 1))
                    .priors(new Kin(Optional.of("shellac"), List.of("oak"))))
        .isInstanceOf(Refusal.class)
        .hasMessage(
            "The log has no patches of that coating or on that wood; it has latex on pine, pulsed"
                + " 1064 nm (4 patches).");
  }
}
