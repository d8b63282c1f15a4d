package charline.stat.interval;

import static org.assertj.core.api.Assertions.assertThat;

import charline.reference.Expected;
import charline.reference.ReferenceCase;
import charline.reference.Tolerance;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Exact binomial bounds; source in the reference folder. */
class ClopperPearsonReferenceTest {

  @Test
  void agrees_with_the_reference() {
    ReferenceCase reference = ReferenceCase.load("clopper-1934");
    Tolerance tolerance = reference.tolerance("");
    for (Expected bounds : reference.fit("bounds").each("expected")) {
      double confidence = bounds.number("confidence");
      ClopperPearson counts =
          new ClopperPearson((int) bounds.number("k"), (int) bounds.number("n"));
      Interval twoSided = counts.twoSided(confidence);
      bounds.check("two_sided_lower", ((Bound.At) twoSided.lower()).value(), tolerance);
      bounds.check("two_sided_upper", ((Bound.At) twoSided.upper()).value(), tolerance);
      bounds.check("one_sided_lower", counts.atLeast(confidence), tolerance);
      bounds.check("one_sided_upper", counts.atMost(confidence), tolerance);
      bounds.nothingIsLeft();
    }
  }

  /** The run that shows a risk: (1 - limit)^n; n by hand from logarithms. */
  @ParameterizedTest
  @CsvSource({
    "0.05, 0.95, 59",
    "0.05, 0.90, 45",
    "0.10, 0.95, 29",
    "0.01, 0.95, 299",
    "0.5, 0.75, 2"
  })
  void a_run_without_events_is_as_long_as_its_bound_asks(double limit, double confidence, int run) {
    assertThat(ClopperPearson.trialsWithoutEvent(limit, confidence)).isEqualTo(run);
    assertThat(new ClopperPearson(0, run).atMost(confidence)).isLessThanOrEqualTo(limit + 1e-12);
    assertThat(new ClopperPearson(0, run - 1).atMost(confidence)).isGreaterThan(limit);
  }
}
