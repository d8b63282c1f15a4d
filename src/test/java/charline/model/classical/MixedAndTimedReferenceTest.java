package charline.model.classical;

import static charline.model.classical.ClassicalTrials.seen;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.model.Event;
import charline.model.ReferenceStrata;
import charline.model.Trials;
import charline.reference.Expected;
import charline.reference.ReferenceCase;
import charline.stat.regression.BinomialRegression;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Published data written as patches: a random intercept by board, and passes to the event. */
class MixedAndTimedReferenceTest {
  private static final int MONTH = 1000;
  private static final double LN2 = Math.log(2);

  /**
   * Animals of a herd as patches of a board (Lesnoff et al. 2004, Preventive Veterinary Medicine
   * 64:27-40). Periods 2, 3 and 4 are a dose and a fluence e times as high and a second pass.
   */
  @Test
  void a_random_intercept_by_board_agrees_with_herds_and_periods() {
    ReferenceCase reference = ReferenceCase.load("lesnoff-2004");
    int[] events = reference.counts("incidence");
    int[] animals = reference.counts("size");
    List<String> herds = reference.labels("herd");
    List<String> periods = reference.labels("period");
    ClassicalTrials bench = new ClassicalTrials();
    for (int i = 0; i < events.length; i++) {
      int period = Integer.parseInt(periods.get(i));
      for (int k = 0; k < animals[i]; k++) {
        bench.burnOn(
            "herd " + herds.get(i),
            period == 2 ? Math.E : 1,
            period == 3 ? Math.E : 1,
            seen(period == 4 ? 2 : 1, k < events[i] ? "char" : "clean"));
      }
    }
    Trials trials = bench.trials();
    PatchRows rows = new PatchRows(trials, Event.CHAR);

    Fitted fit = Method.MIXED.fit(rows, PatchRows.NONE).fitted().orElseThrow();

    Expected expected =
        ReferenceCase.load("random-intercept-integrated").fit("lesnoff-2004").at("expected");
    double[] coefficients = expected.numbers("coef");
    double[] errors = expected.numbers("se_full_hessian");
    List<Coefficient> found = fit.coefficients();
    double[] units = {1, 1, LN2};
    for (int j = 1; j <= units.length; j++) {
      assertThat(found.get(j).estimate() * units[j - 1]).isCloseTo(coefficients[j], within(2e-6));
      assertThat(found.get(j).standardError() * units[j - 1]).isCloseTo(errors[j], within(1e-5));
    }
    assertThat(found.get(0).estimate() - found.get(2).estimate() * trials.lnReferenceIntensity())
        .isCloseTo(coefficients[0], within(2e-6));
    BoardSpread boards = fit.boards().orElseThrow();
    assertThat(boards.boards()).isEqualTo(15);
    assertThat(boards.logOdds()).isCloseTo(expected.number("random_intercept_sd"), within(1e-6));
    double reach =
        Coefficient.normalQuantile(ClassicalRegression.LIMITS)
            * expected.number("se_log_sd_full_hessian");
    assertThat(Math.log(boards.limits().high().orElseThrow() / boards.logOdds()))
        .isCloseTo(reach, within(1e-4));
  }

  /**
   * Months to retraction as passes to clear (Klein and Moeschberger 1997, Survival Analysis, table
   * 1.18): the look before as a reading with residue, the look at it as a clean one. A month is
   * 1000 passes, so that the two months known exactly can be an interval that is all but a point.
   */
  @Test
  void passes_to_clear_agree_with_interval_censored_months() {
    ReferenceCase reference = ReferenceCase.load("klein-1997");
    List<Object> after = reference.column("left");
    List<Object> by = reference.column("right");
    int[] chemo = reference.counts("chemo");
    ClassicalTrials bench = new ClassicalTrials();
    for (int i = 0; i < chemo.length; i++) {
      double dose = Math.exp(chemo[i]);
      int without = after.get(i) == null ? 0 : MONTH * ((Number) after.get(i)).intValue();
      int with = by.get(i) == null ? 0 : MONTH * ((Number) by.get(i)).intValue();
      if (without == with) {
        without--;
        with++;
      }
      if (without > 0 && with > 0) {
        bench.burn(dose, 1, seen(without, "residue"), seen(with, "clean"));
      } else {
        bench.burn(dose, 1, without > 0 ? seen(without, "residue") : seen(with, "clean"));
      }
    }

    ClassicalFit fit =
        (ClassicalFit) ClassicalRegression.by(Method.AFT).fit(bench.trials(), Event.CLEARING);

    Expected expected = reference.fit("treatment").at("expected");
    double[] coefficients = expected.numbers("coef");
    coefficients[0] += Math.log(MONTH);
    double scale = expected.number("scale");
    for (int j = 0; j < coefficients.length; j++) {
      assertThat(fit.coefficients().get(j).estimate()).isCloseTo(coefficients[j], within(1e-6));
      assertThat(fit.coefficients().get(j).standardError())
          .isCloseTo(expected.numbers("se")[j], within(1e-6));
    }
    assertThat(fit.coefficients().get(2).estimate()).isCloseTo(scale, within(1e-6));
    assertThat(fit.coefficients().get(2).standardError())
        .isCloseTo(scale * expected.number("se_log_scale"), within(1e-6));
    assertThat(Math.log(fit.atRisk().orElseThrow().doseJoulesPerCm2()))
        .isCloseTo(
            -(coefficients[0] + scale * Math.log(0.95 / 0.05)) / coefficients[1], within(1e-4));
    assertThat(fit.passes()).extracting(PassesByShare::share).containsExactly(0.5, 0.95);
  }

  /** The same likelihood, written with passes on the other side. */
  @Test
  void timed_passes_give_the_dose_and_the_weights_of_maximum_likelihood() {
    Trials trials = ReferenceStrata.trials("latex", "pine");
    ClassicalFit logistic =
        (ClassicalFit) ClassicalRegression.by(Method.ML).fit(trials, Event.CLEARING);
    ClassicalFit timed =
        (ClassicalFit) ClassicalRegression.by(Method.AFT).fit(trials, Event.CLEARING);

    assertThat(timed.atRisk().orElseThrow().doseJoulesPerCm2())
        .isCloseTo(logistic.atRisk().orElseThrow().doseJoulesPerCm2(), within(1e-5));
    assertThat(timed.sigma().orElseThrow()).isCloseTo(logistic.sigma().orElseThrow(), within(1e-6));
    assertThat(timed.phi().orElseThrow()).isCloseTo(logistic.phi().orElseThrow(), within(1e-5));
    assertThat(timed.psi().orElseThrow()).isCloseTo(logistic.psi().orElseThrow(), within(1e-5));
    assertThat(timed.checks().brier()).isCloseTo(logistic.checks().brier(), within(1e-6));
  }

  /** Half of patches on a new board, or one in twenty, at the dose that says so. */
  @Test
  void the_dose_of_a_mixed_fit_has_its_chance_on_a_board_not_seen_before() {
    PatchRows rows = new PatchRows(ReferenceStrata.trials("varnish", "oak"), Event.CHAR);
    Fitted fit = Method.MIXED.fit(rows, PatchRows.NONE).fitted().orElseThrow();
    assertThat(fit.boards().orElseThrow().logOdds()).isGreaterThan(0.5);

    for (double chance : new double[] {0.05, 0.5, 0.9}) {
      DoseAnswer dose = fit.dose(chance, 0.8, Event.CHAR).orElseThrow();
      double[] at = new double[rows.columns().names().size() + 1];
      at[0] = 1;
      at[1 + rows.columns().names().indexOf(Columns.DOSE)] = Math.log(dose.doseJoulesPerCm2());
      assertThat(fit.chance(at)).isCloseTo(chance, within(1e-9));
      assertThat(dose.limits().hold(dose.doseJoulesPerCm2())).isTrue();
    }
  }

  /** Brackets stay: were its rows independent the slopes would be flatter than the plain fit's. */
  @Test
  void where_boards_do_not_differ_a_mixed_fit_is_the_plain_one() {
    ClassicalTrials bench = new ClassicalTrials();
    double[] doses = {6, 8, 10, 12, 14, 16};
    int[][] lastWithout = {{6, 3, 3, 2, 1, 1}, {4, 5, 2, 3, 2, 1}, {5, 3, 4, 2, 1, 2}};
    IntStream.range(0, 18)
        .forEach(
            i -> {
              int last = lastWithout[i % 3][i / 3];
              bench.burnOn(
                  "board " + i % 3, doses[i / 3], 1, seen(last, "clean"), seen(last + 1, "char"));
            });
    PatchRows rows = new PatchRows(bench.trials(), Event.CHAR);
    List<Coefficient> plain =
        LogisticFitted.fit(BinomialRegression.withDefaults(), rows, PatchRows.NONE)
            .fitted()
            .orElseThrow()
            .coefficients();

    Fitted mixed = Method.MIXED.fit(rows, PatchRows.NONE).fitted().orElseThrow();

    assertThat(mixed.boards().orElseThrow().logOdds()).isZero();
    for (int j = 0; j < plain.size(); j++) {
      assertThat(mixed.coefficients().get(j).estimate())
          .isCloseTo(plain.get(j).estimate(), within(1e-7));
      assertThat(mixed.coefficients().get(j).standardError())
          .isCloseTo(plain.get(j).standardError(), within(1e-7));
    }
  }
}
