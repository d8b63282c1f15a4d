package charline.stat.linear;

import static org.assertj.core.api.Assertions.assertThat;

import charline.reference.Expected;
import charline.reference.ReferenceCase;
import charline.reference.Tolerance;
import charline.stat.interval.FiellerSet;
import charline.stat.regression.BinomialRegressionReferenceTest;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lines and where they meet zero; sources in each reference folder. */
class StraightLineReferenceTest {

  @ParameterizedTest(name = "{0} {1}")
  @CsvSource({
    "ezekiel-1930, all_rows, speed, dist, 1000",
    "ezekiel-1930, speed_up_to_8, speed, dist, 8",
    "nist-norris, line, x, y, 1000",
    "synthetic-threshold, law, ln_fluence, removal_um_per_pass, 1000"
  })
  void agrees_with_the_reference(String folder, String id, String x, String y, double upTo) {
    ReferenceCase reference = ReferenceCase.load(folder);
    Expected expected = reference.fit(id);
    double[] xs = reference.numbers(x);
    double[] ys = reference.numbers(y);
    int[] rows = IntStream.range(0, xs.length).filter(i -> xs[i] <= upTo).toArray();

    LineFit line = StraightLine.fit(pick(xs, rows), pick(ys, rows));

    check(expected, line, reference.tolerance(""));
    if (expected.has("certified")) {
      checkCertified(expected.at("certified"), line);
    }
    if (expected.has("n")) {
      expected.check("n", rows.length, Tolerance.EXACT);
    }
    expected.nothingIsLeft();
  }

  @Test
  void a_narrow_series_has_no_finite_threshold() {
    ReferenceCase reference = ReferenceCase.load("synthetic-threshold");
    Expected series = reference.data("narrow_series");
    double[] logs = Arrays.stream(series.numbers("fluence_j_cm2")).map(Math::log).toArray();

    LineFit line = StraightLine.fit(logs, series.numbers("removal_um_per_pass"));

    Expected expected = reference.fit("narrow");
    check(expected, line, reference.tolerance(""));
    expected.nothingIsLeft();
  }

  private static void check(Expected fit, LineFit line, Tolerance tolerance) {
    Expected expected = fit.at("expected");
    expected.check("intercept", line.intercept(), tolerance);
    expected.check("slope", line.slope(), tolerance);
    expected.check("se_intercept", line.interceptStandardError(), tolerance);
    expected.check("se_slope", line.slopeStandardError(), tolerance);
    expected.check("cov_intercept_slope", line.covariance(), tolerance);
    expected.check("residual_sd", line.residualStandardDeviation(), tolerance);
    expected.check("df_residual", line.degreesOfFreedom(), Tolerance.EXACT);
    expected.check("r_squared", line.rSquared(), tolerance);
    expected.check("rss", line.residualSumOfSquares(), tolerance);
    Expected crossing = expected.at("x_intercept");
    LineFit.Crossing twoSided = line.crossing(0.95).orElseThrow();
    LineFit.Crossing oneSided = line.crossing(0.90).orElseThrow();
    crossing.check("estimate", twoSided.x(), tolerance);
    crossing.check("se_delta", twoSided.deltaStandardError(), tolerance);
    BinomialRegressionReferenceTest.checkFieller(
        crossing.at("fieller_two_sided_95"), twoSided.fieller(), tolerance);
    BinomialRegressionReferenceTest.checkFieller(
        crossing.at("fieller_one_sided_95_each"), oneSided.fieller(), tolerance);
    crossing.skip("words", "definition");
    crossing.nothingIsLeft();
    expected.nothingIsLeft();
    if (fit.has("threshold_fluence")) {
      checkThreshold(fit.at("threshold_fluence"), twoSided, oneSided, tolerance);
    }
    fit.skip("words", "id", "model");
  }

  /** The threshold fluence is the exponential of the crossing of a line in ln F. */
  private static void checkThreshold(
      Expected expected,
      LineFit.Crossing twoSided,
      LineFit.Crossing oneSided,
      Tolerance tolerance) {
    expected.check("estimate", Math.exp(twoSided.x()), tolerance);
    if (twoSided.fieller() instanceof FiellerSet.Finite finite) {
      expected.check(
          "fieller_two_sided_95",
          new double[] {Math.exp(finite.lower()), Math.exp(finite.upper())},
          tolerance);
      expected.check(
          "lower_one_sided_95",
          Math.exp(((FiellerSet.Finite) oneSided.fieller()).lower()),
          tolerance);
    } else {
      assertThat(expected.text("status")).isEqualTo("exclusive");
      expected.skip(
          "null where there is no interval", "fieller_two_sided_95", "lower_one_sided_95");
    }
    expected.skip("the set above has it", "status");
    expected.nothingIsLeft();
  }

  /** NIST prints 15 digits; the data themselves carry three. */
  private static void checkCertified(Expected certified, LineFit line) {
    Tolerance digits = new Tolerance(1e-10, 0);
    certified.check("intercept", line.intercept(), digits);
    certified.check("slope", line.slope(), digits);
    certified.check("se_intercept", line.interceptStandardError(), digits);
    certified.check("se_slope", line.slopeStandardError(), digits);
    certified.check("residual_sd", line.residualStandardDeviation(), digits);
    certified.check("r_squared", line.rSquared(), digits);
    certified.check("rss", line.residualSumOfSquares(), digits);
    double explained = line.totalSumOfSquares() - line.residualSumOfSquares();
    certified.check("regression_ss", explained, digits);
    certified.check(
        "f", explained / (line.residualSumOfSquares() / line.degreesOfFreedom()), digits);
    certified.nothingIsLeft();
  }

  private static double[] pick(double[] values, int[] rows) {
    return IntStream.of(rows).mapToDouble(i -> values[i]).toArray();
  }
}
