package charline.stat.mixed;

import static org.assertj.core.api.Assertions.assertThat;

import charline.reference.Expected;
import charline.reference.ReferenceCase;
import charline.reference.Tolerance;
import charline.stat.linear.Design;
import charline.stat.linear.Term;
import charline.stat.mixed.RandomInterceptOutcome.NoRandomInterceptFit;
import charline.stat.regression.BinomialRegressionReferenceTest;
import charline.stat.regression.BinomialSample;
import charline.stat.regression.BinomialSample.Bracket;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Random intercepts against other software; sources in each reference folder. */
class RandomInterceptReferenceTest {
  private static final ReferenceCase INTEGRATED = ReferenceCase.load("random-intercept-integrated");

  @ParameterizedTest(name = "{0} {1}")
  @CsvSource({
    "lesnoff-2004, laplace, incidence, size, herd",
    "synthetic-patches-48, mixed_board, charred, , board",
    "synthetic-patches-120, mixed_board, charred, , board"
  })
  void agrees_with_25_adaptive_points_of_another_program(
      String folder, String id, String events, String trials, String group) {
    ReferenceCase reference = ReferenceCase.load(folder);
    Expected expected = reference.fit(id).at("expected");

    RandomInterceptFit fit =
        fitted(sample(reference, expected.texts("terms"), events, trials), reference.labels(group));

    Tolerance close = reference.tolerance("coef");
    Expected other = expected.at("adaptive_gauss_hermite_25_for_comparison");
    other.check("coef", coefficients(fit), close);
    other.check("random_intercept_sd", fit.standardDeviation(), close);
    other.nothingIsLeft();
    assertThat(fit.singular()).isEqualTo(expected.flag("singular"));
    if (fit.singular()) { // no approximation is needed, so its numbers are exact
      Tolerance likelihood = reference.tolerance("loglik_deviance");
      expected.check("coef", coefficients(fit), close);
      expected.check("loglik_laplace_with_constants", fit.logLikelihood(), likelihood);
      expected.check("aic", fit.aic(), likelihood);
      expected.check("se_conditional_on_sd", errors(fit), reference.tolerance("se"));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "lesnoff-2004, incidence, size, herd",
    "synthetic-patches-120, charred, , board",
    "onset, , ,"
  })
  void agrees_with_a_dense_grid(String id, String events, String trials, String group) {
    Expected expected = INTEGRATED.fit(id).at("expected");
    boolean published = events != null;
    ReferenceCase data = published ? ReferenceCase.load(id) : INTEGRATED;

    RandomInterceptFit fit =
        published
            ? fitted(sample(data, expected.texts("terms"), events, trials), data.labels(group))
            : fitted(joined(data.data(id)), data.data(id).texts("board"));

    expected.skip("asked for by the design", "terms");
    expected.check("coef", coefficients(fit), INTEGRATED.tolerance("coef"));
    expected.check("random_intercept_sd", fit.standardDeviation(), INTEGRATED.tolerance("coef"));
    expected.check("loglik_with_constants", fit.logLikelihood(), INTEGRATED.tolerance("loglik"));
    expected.check("aic", fit.aic(), INTEGRATED.tolerance("loglik"));
    expected.check("se_full_hessian", errors(fit), INTEGRATED.tolerance("se"));
    expected.check(
        "se_log_sd_full_hessian", fit.logStandardDeviationError(), INTEGRATED.tolerance("se"));
    expected.nothingIsLeft();
  }

  @Test
  void there_is_no_fit_where_the_likelihood_rises_with_the_deviation_throughout() {
    Expected data = INTEGRATED.data("removal");

    RandomInterceptOutcome outcome =
        RandomIntercept.withDefaults().fit(joined(data), data.texts("board"));

    assertThat(outcome)
        .isInstanceOfSatisfying(
            NoRandomInterceptFit.class,
            none ->
                assertThat(none.cause()).isEqualTo(NoRandomInterceptFit.Cause.DEVIATION_UNBOUNDED));
  }

  static BinomialSample joined(Expected data) {
    List<Bracket> brackets =
        IntStream.range(0, data.numbers("before").length)
            .mapToObj(
                k -> new Bracket((int) data.numbers("before")[k], (int) data.numbers("after")[k]))
            .toList();
    List<String> names = List.of("ln_dose", "ln_fluence_over_f0", "ln_passes");
    return BinomialSample.of(
            Design.withIntercept(names, names.stream().map(data::numbers).toArray(double[][]::new)),
            Arrays.stream(data.numbers("shown")).mapToInt(shown -> (int) shown).toArray())
        .withBrackets(brackets);
  }

  private static BinomialSample sample(
      ReferenceCase reference, List<String> terms, String events, String trials) {
    return BinomialRegressionReferenceTest.sample(reference, terms, events, trials, null);
  }

  private static RandomInterceptFit fitted(BinomialSample sample, List<String> groups) {
    RandomInterceptOutcome outcome = RandomIntercept.withDefaults().fit(sample, groups);
    assertThat(outcome).isInstanceOf(RandomInterceptFit.class);
    return (RandomInterceptFit) outcome;
  }

  private static double[] coefficients(RandomInterceptFit fit) {
    return fit.terms().stream().mapToDouble(Term::estimate).toArray();
  }

  private static double[] errors(RandomInterceptFit fit) {
    return fit.terms().stream().mapToDouble(Term::standardError).toArray();
  }
}
