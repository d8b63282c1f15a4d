package charline.stat.check;

import static org.assertj.core.api.Assertions.assertThat;

import charline.reference.Expected;
import charline.reference.ReferenceCase;
import charline.reference.Tolerance;
import charline.stat.regression.BinomialFit;
import charline.stat.regression.BinomialRegression;
import charline.stat.regression.BinomialSample;
import charline.stat.regression.Estimator;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Fit checks against other software; sources in each reference folder. */
class ChecksReferenceTest {

  @ParameterizedTest(name = "{0} {1}")
  @CsvSource({
    "dalal-1989, ml_binary, MAXIMUM_LIKELIHOOD, any_distress, 5",
    "dalal-1989, firth_binary, FIRTH_PENALISED, any_distress, 5",
    "heinze-2002, firth, FIRTH_PENALISED, HG, 10",
    "hosmer-1989, main, MAXIMUM_LIKELIHOOD, low, 10",
    "synthetic-patches-48, firth_pooled_slopes, FIRTH_PENALISED, charred, 10",
    "synthetic-patches-48, ml_pooled_slopes, MAXIMUM_LIKELIHOOD, charred, 10",
    "synthetic-patches-120, firth_pooled_slopes, FIRTH_PENALISED, charred, 10",
    "synthetic-patches-120, ml_pooled_slopes, MAXIMUM_LIKELIHOOD, charred, 10"
  })
  void agrees_with_the_reference(
      String folder, String id, Estimator estimator, String response, int groups) {
    ReferenceCase reference = ReferenceCase.load(folder);
    Expected whole = reference.fit(id);
    BinomialRegression method = BinomialRegression.withDefaults().with(estimator);
    int[] outcomes = reference.counts(response);
    BinomialSample sample =
        BinomialSample.of(reference.design(whole.at("expected").texts("terms")), outcomes);
    BinomialFit fit = (BinomialFit) method.fit(sample);

    Expected expected =
        whole.at(
            whole.has("goodness_of_fit") ? "goodness_of_fit" : "goodness_of_fit_of_firth_risks");
    checkRisks(reference, expected, RiskCheck.of(outcomes, fit.risks()));
    Expected both = expected.at("hosmer_lemeshow");
    for (HosmerLemeshow.Grouping grouping : HosmerLemeshow.Grouping.values()) {
      checkGroups(
          reference,
          both.at(grouping.name().toLowerCase(Locale.ROOT)),
          new HosmerLemeshow(groups, grouping).test(outcomes, fit.risks()));
    }
    both.nothingIsLeft();
    expected.nothingIsLeft();
  }

  /** Two distinct risks: cut points fall together, and the test says so instead of a number. */
  @Test
  void ties_leave_too_few_groups_for_quantile_cuts() {
    ReferenceCase reference = ReferenceCase.load("hosmer-1989");
    Expected ties = reference.fit("ties");
    int[] outcomes = reference.counts("low");
    BinomialFit fit =
        (BinomialFit)
            BinomialRegression.withDefaults()
                .fit(
                    BinomialSample.of(reference.design(List.of("(Intercept)", "smoke")), outcomes));

    assertThat(HosmerLemeshow.withDefaults().test(outcomes, fit.risks()))
        .isEqualTo(
            new HosmerLemeshow.TooFewGroups(
                "The test needs at least 3 groups of like risk, but only 2 came about;"
                    + " compare observed with fitted shares directly."));
    checkGroups(
        reference,
        ties.at("rank_split"),
        HosmerLemeshow.withDefaults()
            .with(HosmerLemeshow.Grouping.RANK_SPLIT)
            .test(outcomes, fit.risks()));
  }

  private static void checkRisks(ReferenceCase reference, Expected expected, RiskCheck check) {
    Tolerance tolerance = reference.tolerance("loglik_deviance");
    expected.check("deviance", check.deviance(), tolerance);
    expected.check("pearson_chisq", check.pearson(), tolerance);
    expected.check("brier", check.brier(), tolerance);
    expected.check("log_loss_mean", check.meanLogLoss(), tolerance);
    expected.check("auc", check.areaUnderCurve().orElseThrow(), new Tolerance(1e-12, 0));
  }

  private static void checkGroups(
      ReferenceCase reference, Expected expected, HosmerLemeshow.Outcome outcome) {
    assertThat(outcome).isInstanceOf(HosmerLemeshow.Tested.class);
    HosmerLemeshow.Tested tested = (HosmerLemeshow.Tested) outcome;
    List<HosmerLemeshow.Group> groups = tested.groups();
    expected.check("groups", groups.size(), Tolerance.EXACT);
    expected.check("df", tested.degreesOfFreedom(), Tolerance.EXACT);
    expected.check("chisq", tested.statistic(), reference.tolerance("loglik_deviance"));
    expected.check("p_value", tested.probability(), reference.tolerance("p_values"));
    expected.check(
        "group_n",
        groups.stream().mapToDouble(HosmerLemeshow.Group::rows).toArray(),
        Tolerance.EXACT);
    expected.check(
        "observed_events",
        groups.stream().mapToDouble(HosmerLemeshow.Group::events).toArray(),
        Tolerance.EXACT);
    expected.check(
        "expected_events",
        groups.stream().mapToDouble(HosmerLemeshow.Group::expected).toArray(),
        reference.tolerance("coef"));
    expected.skip("words", "definition");
    expected.nothingIsLeft();
  }
}
