package charline.stat.regression;

import charline.reference.Expected;
import charline.reference.ReferenceCase;
import charline.reference.Tolerance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** NIST Statistical Reference Datasets, Misra1a: certified to 11 digits. */
class NonlinearLeastSquaresReferenceTest {

  @ParameterizedTest(name = "from {0}, {1}")
  @CsvSource({"500, 0.0001", "250, 0.0005"})
  void agrees_with_certified_values_from_both_starts(double b1, double b2) {
    ReferenceCase reference = ReferenceCase.load("nist-misra1a");
    Expected exponential = reference.fit("exponential");

    CurveOutcome.Fitted fit =
        (CurveOutcome.Fitted)
            NonlinearLeastSquares.withDefaults()
                .fit(Curve.saturating(), reference.numbers("x"), reference.numbers("y"), b1, b2);

    for (String kind : new String[] {"expected", "certified"}) {
      Expected expected = exponential.at(kind);
      Tolerance tolerance = reference.tolerance("");
      expected.check("b1", fit.estimates().get(0), tolerance);
      expected.check("b2", fit.estimates().get(1), tolerance);
      expected.check("sd_b1", fit.standardErrors().get(0), tolerance);
      expected.check("sd_b2", fit.standardErrors().get(1), tolerance);
      expected.check("rss", fit.residualSumOfSquares(), tolerance);
      expected.check("residual_sd", fit.residualStandardDeviation(), tolerance);
      expected.nothingIsLeft();
    }
  }
}
