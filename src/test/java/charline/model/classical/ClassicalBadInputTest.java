package charline.model.classical;

import static charline.model.classical.ClassicalTrials.seen;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import charline.model.Event;
import charline.model.classical.AblationOutcome.NoAblation;
import charline.model.classical.ClassicalOutcome.NoClassicalFit;
import charline.model.classical.ClassicalOutcome.Separating;
import charline.refusal.Refusal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What the trials will not bear is said in a sentence, and no number is made up. */
class ClassicalBadInputTest {
  @ParameterizedTest
  @EnumSource(Method.class)
  void one_patch_is_no_curve(Method method) {
    assertThat(reason(new ClassicalTrials().burn(10, 1, seen(1, "char")), method))
        .isEqualTo(
            "A curve needs patches that charred and some that did not, but there is only one patch;"
                + " burn more, at different doses.");
  }

  @ParameterizedTest
  @EnumSource(Method.class)
  void outcomes_that_are_all_alike_give_a_share_and_no_curve(Method method) {
    ClassicalTrials never = new ClassicalTrials();
    ClassicalTrials always = new ClassicalTrials();
    for (int i = 0; i < 10; i++) {
      never.burn(5 + i, 1, seen(1, "clean"));
      always.burn(5 + i, 1, seen(1, "char"));
    }

    // 1 - 0.1^(1/10) = 20.6 %: Clopper and Pearson 1934 for no event in ten
    assertThat(reason(never, method))
        .isEqualTo(
            "A curve needs patches that charred and some that did not, but none of 10 charred;"
                + " patches burned like these char in at most 20.6 % of cases (90 % confidence,"
                + " Clopper-Pearson); burn some hotter.");
    assertThat(reason(always, method))
        .isEqualTo(
            "A curve needs patches that charred and some that did not, but char was seen at the"
                + " first reading of all 10; patches burned like these char in at least 79.4 % of"
                + " cases (90 % confidence, Clopper-Pearson); burn some with less dose.");
  }

  @Test
  void settings_that_are_all_alike_give_a_share_and_no_curve() {
    ClassicalTrials bench = new ClassicalTrials();
    for (int i = 0; i < 6; i++) {
      bench.burn(10, 1, seen(2, i < 2 ? "char" : "clean"));
    }

    assertThat(reason(bench, Method.FIRTH))
        .startsWith(
            "A curve needs settings that differ, but all 6 patches had the same: 2 of them charred,"
                + " which at those settings means a chance between 6.28 and 72.9 %");
  }

  @Test
  void fewer_rows_than_coefficients_are_refused() {
    ClassicalTrials bench =
        new ClassicalTrials().burn(10, 1, seen(1, "clean")).burn(20, 1.5, seen(2, "char"));

    assertThat(reason(bench, Method.FIRTH))
        .isEqualTo(
            "A fit of 2 coefficients needs more than 2 rows, but there are 2; burn more patches.");
  }

  @Test
  void passes_that_never_change_are_left_out_and_the_dose_is_for_that_many() {
    ClassicalTrials bench = new ClassicalTrials();
    for (int i = 0; i < 20; i++) {
      bench.burn(5 + 2 * i, 1 + i % 3 * 0.2, seen(2, i % 4 + i > 12 ? "char" : "clean"));
    }

    ClassicalFit fit = fit(bench, Method.FIRTH);

    assertThat(fit.notes())
        .containsExactly("ln passes is left out: every row has the same number, 2.");
    assertThat(fit.at().passes()).isEqualTo(2);
    assertThat(fit.coefficients()).extracting(Coefficient::name).doesNotContain("ln passes");
  }

  @Test
  void fluence_that_moves_with_dose_only_is_left_out() {
    ClassicalTrials bench = new ClassicalTrials();
    for (int i = 0; i < 12; i++) {
      bench.burn(5 * (1 + 0.2 * i), 1 + 0.2 * i, seen(1, i == 4 || i > 6 ? "char" : "clean"));
    }

    ClassicalFit fit = fit(bench, Method.ML);

    assertThat(fit.at().movedAlong()).containsExactly("fluence");
    assertThat(fit.notes())
        .contains(
            "ln fluence / F0 is left out: in these trials it changed only together with ln dose"
                + " (J/cm2), so its own effect is unknown; burn some patches where it alone"
                + " changes.");
  }

  @Test
  void patches_burned_twice_change_no_estimate_and_tighten_the_limits() {
    ClassicalFit once = fit(mixed(1), Method.ML);
    ClassicalFit twice = fit(mixed(2), Method.ML);

    for (int j = 0; j < once.coefficients().size(); j++) {
      Coefficient a = once.coefficients().get(j);
      Coefficient b = twice.coefficients().get(j);
      assertThat(b.estimate()).isCloseTo(a.estimate(), within(1e-6));
      assertThat(b.standardError() * Math.sqrt(2)).isCloseTo(a.standardError(), within(1e-6));
      assertThat(a.limits().hold(b.limits().low().orElseThrow())).isTrue();
    }
  }

  @ParameterizedTest
  @EnumSource(Method.class)
  void doses_a_million_times_apart_leave_finite_numbers(Method method) {
    ClassicalTrials bench =
        mixed(1).burn(1e-5, 1.1, seen(1, "clean")).burn(1e7, 1.3, seen(1, "char"));

    ClassicalOutcome outcome = outcome(bench, method);

    assertThat(outcome.toString()).doesNotContain("NaN");
    assertThat(((ClassicalFit) outcome).coefficients())
        .allSatisfy(c -> assertThat(c.estimate()).isFinite());
  }

  @Test
  void a_wild_patch_that_turns_the_slope_is_not_given_a_safe_dose() {
    ClassicalTrials bench = new ClassicalTrials();
    for (int i = 0; i < 12; i++) {
      bench.burn(5 + i, 1, seen(1, i % 3 == 0 || i < 5 ? "char" : "clean"));
    }

    assertThat(fit(bench, Method.ML).atRisk().orElseThrow().rising()).isFalse();
  }

  @Test
  void separation_is_named_and_told_in_words() {
    ClassicalTrials bench = new ClassicalTrials();
    for (int i = 0; i < 8; i++) {
      bench.burn(5 + i, 1, seen(1, i > 3 ? "char" : "clean"));
    }

    NoClassicalFit none = (NoClassicalFit) outcome(bench, Method.ML);
    ClassicalFit fit = fit(bench, Method.FIRTH);

    assertThat(none.separation()).isEqualTo(fit.separation());
    Separating separating = fit.separation().orElseThrow();
    assertThat(separating.kind()).isEqualTo("complete");
    assertThat(separating.words())
        .startsWith(
            "Every charred patch had more dose than every uncharred one (9 J/cm2 against at most"
                + " 8), so a step anywhere between explains them all. That is complete separation:"
                + " ")
        .contains("maximum likelihood has no finite answer; Firth's has");
    assertThat(none.reason())
        .isEqualTo("There is no fit by maximum likelihood; ask for firth instead.");
  }

  @Test
  void a_tie_at_one_dose_is_quasi_complete_separation() {
    ClassicalTrials bench = new ClassicalTrials();
    for (int i = 0; i < 8; i++) {
      bench.burn(5 + i, 1, seen(1, i > 3 ? "char" : "clean"));
    }
    bench.burn(9, 1, seen(1, "clean"));

    Separating separating = fit(bench, Method.FIRTH).separation().orElseThrow();

    assertThat(separating.kind()).isEqualTo("quasi-complete");
    assertThat(separating.words())
        .startsWith(
            "No charred patch had less dose than any uncharred one, and only at the same dose");
  }

  @Test
  void depths_that_bear_no_law_are_refused_in_a_sentence() {
    ClassicalTrials none = new ClassicalTrials().burn(5, 1, seen(1, "residue"));
    ClassicalTrials alike = new ClassicalTrials();
    ClassicalTrials falling = new ClassicalTrials();
    ClassicalTrials few = new ClassicalTrials();
    for (int i = 0; i < 5; i++) {
      alike.burn(5, 1, new ClassicalTrials.Seen(1, "residue", 10 + i));
      falling.burn(5 + i, 1 + 0.2 * i, new ClassicalTrials.Seen(1, "residue", 10 - i));
      few.burn(5, 1 + 0.2 * i, new ClassicalTrials.Seen(1, i < 2 ? "residue" : "clean", 10 + i));
    }

    assertThat(law(none)).isEmpty();
    assertThat(law(alike))
        .containsExactly(
            "The ablation law needs depths at more than one fluence, but all 5 were measured at 1"
                + " J/cm2; change the power.");
    assertThat(law(falling).get(0)).startsWith("Depth per pulse must rise with fluence");
    assertThat(law(few))
        .containsExactly(
            "The ablation law needs depths on 3 patches or more that still had residue, but there"
                + " are 2; measure more.");
  }

  @Test
  void a_confidence_that_bounds_nothing_is_refused() {
    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(() -> new ClassicalRegression(Method.ML, 0.05, 0.5))
        .withMessage(
            "Confidence must lie between 0.5 and 1, not 0.5; a bound that is wrong more often than"
                + " right is no bound.");
  }

  /** Overlapping outcomes at settings that all move. */
  private static ClassicalTrials mixed(int times) {
    ClassicalTrials bench = new ClassicalTrials();
    for (int t = 0; t < times; t++) {
      for (int i = 0; i < 18; i++) {
        boolean hot = 6 + i + 3 * (i % 4) > 20 ^ i % 7 == 0;
        bench.burn(
            4 + 1.5 * i,
            1 + i * 7 % 5 * 0.15,
            hot && i % 2 == 0
                ? new ClassicalTrials.Seen[] {seen(1 + i % 3, "clean"), seen(3 + i % 3, "char")}
                : new ClassicalTrials.Seen[] {seen(1 + i % 3, hot ? "char" : "clean")});
      }
    }
    return bench;
  }

  private static ClassicalOutcome outcome(ClassicalTrials bench, Method method) {
    return ClassicalRegression.by(method).fit(bench.trials(), Event.CHAR);
  }

  private static ClassicalFit fit(ClassicalTrials bench, Method method) {
    return (ClassicalFit) outcome(bench, method);
  }

  private static String reason(ClassicalTrials bench, Method method) {
    return ((NoClassicalFit) outcome(bench, method)).reason();
  }

  private static List<String> law(ClassicalTrials bench) {
    return AblationRegression.withDefaults().fit(bench.patches()).stream()
        .map(outcome -> ((NoAblation) outcome).reason())
        .toList();
  }
}
