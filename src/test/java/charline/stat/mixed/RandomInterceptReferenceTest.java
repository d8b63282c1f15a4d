package charline.stat.mixed;

import static org.assertj.core.api.Assertions.assertThat;

import charline.reference.Expected;
import charline.reference.ReferenceCase;
import charline.reference.Tolerance;
import charline.stat.linear.Term;
import charline.stat.regression.BinomialRegressionReferenceTest;
import charline.stat.regression.BinomialSample;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Random intercepts against other software; sources in each reference folder. */
class RandomInterceptReferenceTest {

  @ParameterizedTest(name = "{0} {1}")
  @CsvSource({
    "lesnoff-2004, laplace, incidence, size, herd",
    "synthetic-patches-48, mixed_board, charred, , board",
    "synthetic-patches-120, mixed_board, charred, , board"
  })
  void agrees_with_the_reference(
      String folder, String id, String events, String trials, String group) {
    ReferenceCase reference = ReferenceCase.load(folder);
    Expected expected = reference.fit(id).at("expected");
    BinomialSample sample =
        BinomialRegressionReferenceTest.sample(
            reference, expected.texts("terms"), events, trials, null);

    RandomInterceptOutcome outcome =
        RandomIntercept.withDefaults().fit(sample, reference.labels(group));

    assertThat(outcome).isInstanceOf(RandomInterceptFit.class);
    RandomInterceptFit fit = (RandomInterceptFit) outcome;
    // The reference is a maximum to rounding, so more digits are asked for than the file says.
    Tolerance close = new Tolerance(1e-6, 1e-7);
    Tolerance errors = reference.tolerance("se");
    double[] coefficients = fit.terms().stream().mapToDouble(Term::estimate).toArray();
    expected.check("coef", coefficients, close);
    expected.check("random_intercept_sd", fit.standardDeviation(), close);
    expected.check(
        "random_intercept_var", fit.standardDeviation() * fit.standardDeviation(), close);
    assertThat(fit.singular()).isEqualTo(expected.flag("singular"));
    Tolerance likelihood = reference.tolerance("loglik_deviance");
    expected.check("loglik_laplace_with_constants", fit.logLikelihood(), likelihood);
    expected.check("deviance_minus2loglik", -2 * fit.logLikelihood(), likelihood);
    expected.check("aic", fit.aic(), likelihood);
    if (!fit.singular()) {
      expected.check(
          "se_full_hessian",
          fit.terms().stream().mapToDouble(Term::standardError).toArray(),
          errors);
      expected.check("se_log_sd_full_hessian", fit.logStandardDeviationError(), errors);
    }
    expected.check("conditional_modes", ordered(expected, fit, g -> g.mode()), close);
    expected.check("conditional_sd", ordered(expected, fit, g -> g.standardDeviation()), errors);
    checkOtherProgram(reference, expected, fit, coefficients);
    expected.skip(
        "the reference against itself",
        "check_max_abs_gradient",
        "lme4_minus_own_max_abs_coef",
        "lme4_minus_own_loglik");
    expected.skip("with the deviation as if it were known", "se_conditional_on_sd");
    expected.skip(
        "another approximation, for comparison", "adaptive_gauss_hermite_25_for_comparison");
    expected.nothingIsLeft();
  }

  private static void checkOtherProgram(
      ReferenceCase reference, Expected expected, RandomInterceptFit fit, double[] coefficients) {
    Expected other = expected.at("lme4");
    Tolerance tolerance = reference.tolerance("laplace");
    other.check("coef", coefficients, tolerance);
    other.check("random_intercept_sd", fit.standardDeviation(), tolerance);
    other.check("loglik", fit.logLikelihood(), new Tolerance(0, 1e-4));
    other.check(
        "se_vcov_default",
        fit.terms().stream().mapToDouble(Term::standardError).toArray(),
        tolerance);
    other.skip("with the deviation as if it were known", "se_vcov_use_hessian_false");
    other.nothingIsLeft();
  }

  /** The reference sorts its groups. */
  private static double[] ordered(
      Expected expected, RandomInterceptFit fit, ToDoubleFunction<RandomInterceptFit.Group> value) {
    Map<String, RandomInterceptFit.Group> byLabel =
        fit.groups().stream().collect(Collectors.toMap(g -> g.label(), g -> g));
    List<String> labels = expected.texts("groups");
    assertThat(byLabel.keySet()).containsExactlyInAnyOrderElementsOf(labels);
    return labels.stream().map(byLabel::get).mapToDouble(value).toArray();
  }
}
