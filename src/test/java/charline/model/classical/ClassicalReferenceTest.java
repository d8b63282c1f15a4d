package charline.model.classical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.model.CensoredPasses;
import charline.model.Event;
import charline.model.ReferenceStrata;
import charline.model.Trials;
import charline.reference.Expected;
import charline.reference.ReferenceCase;
import charline.stat.linear.Design;
import charline.stat.survival.CensoredTimes;
import charline.stat.survival.LogLogisticFit;
import charline.stat.survival.LogLogisticRegression;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Patches through the classical view agree with fits of the same data by other software. */
class ClassicalReferenceTest {
  private static final double LN10 = Math.log(10);

  /** Dose per unit of fluence: pulses on a point, alike on all patches. */
  private static final double PULSES = 5;

  /**
   * One coating family of each file. Power is the only knob, so dose rises with fluence and a slope
   * per decade of fluence is one per decade of dose.
   */
  @ParameterizedTest
  @CsvSource({
    "synthetic-patches-48, A",
    "synthetic-patches-48, B",
    "synthetic-patches-48, C",
    "synthetic-patches-120, A",
    "synthetic-patches-120, B",
    "synthetic-patches-120, C"
  })
  void firth_on_patches_gives_the_coefficients_and_the_5_percent_dose(
      String folder, String family) {
    ReferenceCase reference = ReferenceCase.load(folder);
    double[] log10Fluence = reference.numbers("log10_fluence");
    int[] charred = reference.counts("charred");
    ClassicalTrials bench = new ClassicalTrials();
    for (int i : reference.rowsWhere("family", family)) {
      double fluence = Math.pow(10, log10Fluence[i]);
      bench.burn(
          PULSES * fluence, fluence, ClassicalTrials.seen(1, charred[i] == 1 ? "char" : "clean"));
    }

    ClassicalFit fit =
        (ClassicalFit)
            new ClassicalRegression(Method.FIRTH, 0.05, 0.95).fit(bench.trials(), Event.CHAR);

    Expected expected = reference.fit("firth_family_" + family).at("expected");
    Coefficient slope = fit.coefficients().get(1);
    assertThat(fit.at().movedAlong()).containsExactly("fluence");
    assertThat(slope.estimate() * LN10).isCloseTo(expected.numbers("coef")[1], within(1e-7));
    assertThat(slope.standardError() * LN10)
        .isCloseTo(expected.numbers("se_information")[1], within(1e-7));
    assertThat(fit.coefficients().get(0).estimate() + slope.estimate() * Math.log(PULSES))
        .isCloseTo(expected.numbers("coef")[0], within(1e-7));
    Expected ed05 = reference.fit("firth_family_" + family).at("ed05");
    DoseAnswer dose = fit.atRisk().orElseThrow();
    assertThat(Math.log10(dose.doseJoulesPerCm2() / PULSES))
        .isCloseTo(ed05.number("estimate"), within(1e-7));
    if (ed05.text("profile_lower_one_sided_95_status").equals("unbounded")) {
      assertThat(dose.bound()).isEmpty();
    } else {
      assertThat(Math.log10(dose.bound().orElseThrow() / PULSES))
          .isCloseTo(ed05.number("profile_lower_one_sided_95"), within(1e-6));
    }
  }

  /** The same likelihood written as a fit of censored times, which other software has checked. */
  @ParameterizedTest
  @ValueSource(strings = {"CHAR", "CLEARING"})
  void maximum_likelihood_on_patches_read_after_each_pass_is_the_fit_of_censored_times(
      Event event) {
    Trials trials = ReferenceStrata.trials("latex", "pine");
    List<CensoredPasses> all = trials.censored(event);
    double reference = trials.lnReferenceIntensity();
    Design design =
        Design.withIntercept(
            List.of("dose", "intensity"),
            all.stream().mapToDouble(CensoredPasses::lnDose).toArray(),
            all.stream().mapToDouble(c -> c.lnIntensity() - reference).toArray());
    CensoredTimes times =
        CensoredTimes.between(
            all.stream().mapToDouble(CensoredPasses::passesWithout).toArray(),
            all.stream()
                .mapToDouble(c -> c.seen() ? c.passesWith() : Double.POSITIVE_INFINITY)
                .toArray());
    LogLogisticFit aft = (LogLogisticFit) LogLogisticRegression.withDefaults().fit(design, times);

    ClassicalFit fit = (ClassicalFit) ClassicalRegression.by(Method.ML).fit(trials, event);

    List<Coefficient> c = fit.coefficients();
    assertThat(1 / c.get(3).estimate()).isCloseTo(aft.scale(), within(1e-7));
    for (int j = 0; j < 3; j++) {
      assertThat(-c.get(j).estimate() * aft.scale())
          .isCloseTo(aft.terms().get(j).estimate(), within(1e-5));
    }
  }

  @ParameterizedTest
  @CsvSource({"law, false", "narrow, true"})
  void the_ablation_law_gives_the_threshold_fluence_with_its_fieller_interval(
      String id, boolean unbounded) {
    ReferenceCase reference = ReferenceCase.load("synthetic-threshold");
    Expected narrow = unbounded ? reference.data("narrow_series") : null;
    double[] fluence =
        unbounded ? narrow.numbers("fluence_j_cm2") : reference.numbers("fluence_j_cm2");
    double[] depth =
        unbounded
            ? narrow.numbers("removal_um_per_pass")
            : reference.numbers("removal_um_per_pass");
    ClassicalTrials bench = new ClassicalTrials();
    for (int i = 0; i < fluence.length; i++) {
      int passes = 1 + i % 4; // passes and pulses differ, depth per pulse does not
      double pulses = 1 + i % 3;
      bench.burn(
          pulses * fluence[i],
          fluence[i],
          new ClassicalTrials.Seen(passes, "residue", passes * pulses * depth[i]));
    }

    AblationFit law = (AblationFit) new AblationRegression(0.95).fit(bench.patches()).orElseThrow();

    Expected expected = reference.fit(id);
    assertThat(law.micrometresPerEFold())
        .isCloseTo(expected.at("expected").number("slope"), within(1e-5));
    assertThat(law.thresholdJoulesPerCm2())
        .isCloseTo(expected.at("threshold_fluence").number("estimate"), within(1e-5));
    assertThat(law.unbounded()).isEqualTo(unbounded);
    if (!unbounded) {
      // ln F of the file has 15 digits
      assertThat(
              new double[] {
                law.threshold().low().orElseThrow(), law.threshold().high().orElseThrow()
              })
          .containsExactly(
              expected.at("threshold_fluence").numbers("fieller_two_sided_95"), within(1e-6));
    } else {
      assertThat(law.threshold().low()).isEmpty();
      assertThat(law.atMost().orElseThrow())
          .isCloseTo(
              Math.exp(
                  expected
                      .at("expected")
                      .at("x_intercept")
                      .at("fieller_two_sided_95")
                      .numbers("exclusive_roots")[0]),
              within(1e-6));
    }
  }
}
