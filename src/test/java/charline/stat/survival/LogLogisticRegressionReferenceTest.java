package charline.stat.survival;

import static org.assertj.core.api.Assertions.assertThat;

import charline.reference.Expected;
import charline.reference.ReferenceCase;
import charline.reference.Tolerance;
import charline.stat.interval.Bound;
import charline.stat.linear.Design;
import charline.stat.linear.Term;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Censored times against other software; sources in each reference folder. */
class LogLogisticRegressionReferenceTest {

  @ParameterizedTest(name = "{0} {1}")
  @CsvSource({
    "klein-1997, treatment, left, right,",
    "klein-1997, radiotherapy_only, left, right, 0",
    "synthetic-patches-48, aft_passes_to_clear, last_passes_uncleared, first_passes_cleared,",
    "synthetic-patches-120, aft_passes_to_clear, last_passes_uncleared, first_passes_cleared,"
  })
  void agrees_with_the_reference(String folder, String id, String after, String by, String chemo) {
    ReferenceCase reference = ReferenceCase.load(folder);
    Expected whole = reference.fit(id);
    Expected expected = whole.at("expected");
    Design all = reference.design(expected.texts("terms"));
    int[] rows =
        chemo == null
            ? IntStream.range(0, all.rowCount()).toArray()
            : reference.rowsWhere("chemo", chemo);
    CensoredTimes times = times(reference, after, by, rows);

    LogLogisticFit fit = fit(all.rows(rows), times);

    double[] coefficients = fit.terms().stream().mapToDouble(Term::estimate).toArray();
    Tolerance estimates = reference.tolerance("coef");
    Tolerance errors = reference.tolerance("se");
    Tolerance likelihoods = reference.tolerance("loglik_deviance");
    expected.check("coef", coefficients, estimates);
    expected.check("se", fit.terms().stream().mapToDouble(Term::standardError).toArray(), errors);
    expected.check("scale", fit.scale(), estimates);
    expected.check("log_scale", Math.log(fit.scale()), estimates);
    expected.check("se_log_scale", fit.logScaleError(), errors);
    expected.check("vcov_coef_logscale", fit.covariance(), errors);
    expected.check("loglik", fit.logLikelihood(), likelihoods);
    expected.check(
        "loglik_intercept_only",
        fit(Design.interceptOnly(rows.length), times).logLikelihood(),
        likelihoods);
    for (Expected at : expected.each("quantiles")) {
      checkQuantiles(at, fit, estimates, errors);
    }
    expected.skip("words", "distribution");
    expected.skip(
        "the reference against itself", "check_max_abs_score", "check_max_abs_diff_to_survreg");
    expected.nothingIsLeft();
    if (whole.has("censoring")) {
      Expected censoring = whole.at("censoring");
      censoring.check("left", times.count(CensoredTimes.Kind.LEFT), Tolerance.EXACT);
      censoring.check("right", times.count(CensoredTimes.Kind.RIGHT), Tolerance.EXACT);
      censoring.check("interval", times.count(CensoredTimes.Kind.INTERVAL), Tolerance.EXACT);
      censoring.nothingIsLeft();
    }
  }

  private static void checkQuantiles(
      Expected at, LogLogisticFit fit, Tolerance estimates, Tolerance errors) {
    double[] covariates = at.numbers("terms_vector");
    for (Expected q : at.each("q")) {
      double share = q.number("fraction_by_t");
      LogLogisticFit.Quantile quantile = fit.quantile(share, 0.95, covariates);
      q.check("t", quantile.time(), estimates);
      q.check("ln_t", Math.log(quantile.time()), estimates);
      q.check("se_ln_t", quantile.logTimeError(), errors);
      q.check("wald_lower95_t", ((Bound.At) quantile.wald().lower()).value(), errors);
      q.check("wald_upper95_t", ((Bound.At) quantile.wald().upper()).value(), errors);
      q.check("fraction_by_t", fit.shareBy(quantile.time(), covariates), estimates);
      q.nothingIsLeft();
    }
  }

  private static LogLogisticFit fit(Design design, CensoredTimes times) {
    LogLogisticOutcome outcome = LogLogisticRegression.withDefaults().fit(design, times);
    assertThat(outcome).isInstanceOf(LogLogisticFit.class);
    return (LogLogisticFit) outcome;
  }

  private static CensoredTimes times(ReferenceCase reference, String after, String by, int[] rows) {
    return CensoredTimes.between(
        ends(reference.column(after), rows, 0),
        ends(reference.column(by), rows, Double.POSITIVE_INFINITY));
  }

  private static double[] ends(List<Object> column, int[] rows, double missing) {
    return Arrays.stream(rows)
        .mapToObj(column::get)
        .mapToDouble(value -> value == null ? missing : ((Number) value).doubleValue())
        .toArray();
  }
}
