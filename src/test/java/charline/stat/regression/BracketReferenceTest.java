package charline.stat.regression;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import charline.reference.ReferenceCase;
import charline.stat.interval.Bound;
import charline.stat.inverse.ProfileLimits;
import charline.stat.linear.Design;
import charline.stat.regression.BinomialSample.Bracket;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A logistic fit with brackets is a log-logistic fit of censored times written another way: with
 * scale s, the coefficient of ln time is 1/s and every other -b/s. So the expected numbers of the
 * interval-censored fits, made by other software, must come out.
 */
class BracketReferenceTest {
  private static final String TIME = "ln time";

  @ParameterizedTest
  @ValueSource(strings = {"synthetic-patches-48", "synthetic-patches-120"})
  void rows_with_brackets_give_the_fit_of_censored_times(String folder) {
    ReferenceCase reference = ReferenceCase.load(folder);
    BinomialFit fit = (BinomialFit) BinomialRegression.withDefaults().fit(sample(reference, true));
    var expected = reference.fit("aft_passes_to_clear").at("expected");

    double scale = 1 / fit.term(TIME).estimate();
    double[] effects =
        fit.terms().stream()
            .filter(t -> !t.name().equals(TIME))
            .mapToDouble(t -> -t.estimate() * scale)
            .toArray();

    assertThat(scale).isCloseTo(expected.number("scale"), within(1e-7));
    assertThat(effects).containsExactly(expected.numbers("coef"), within(1e-6));
  }

  @Test
  void without_brackets_the_same_rows_give_flatter_slopes() {
    ReferenceCase reference = ReferenceCase.load("synthetic-patches-48");
    BinomialRegression method = BinomialRegression.withDefaults();

    double joined = ((BinomialFit) method.fit(sample(reference, true))).term(TIME).estimate();
    double apart = ((BinomialFit) method.fit(sample(reference, false))).term(TIME).estimate();

    assertThat(apart).isLessThan(0.9 * joined);
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void profile_limits_hold_the_estimate_and_stay_above_no_effect_of_time(boolean firth) {
    BinomialRegression method =
        BinomialRegression.withDefaults()
            .with(firth ? Estimator.FIRTH_PENALISED : Estimator.MAXIMUM_LIKELIHOOD);
    BinomialFit fit =
        (BinomialFit) method.fit(sample(ReferenceCase.load("synthetic-patches-48"), true));

    var limits = ProfileLimits.withDefaults().of(fit, TIME).interval();

    double low = ((Bound.At) limits.lower()).value();
    double high = ((Bound.At) limits.upper()).value();
    assertThat(low).isPositive().isLessThan(fit.term(TIME).estimate());
    assertThat(high).isGreaterThan(fit.term(TIME).estimate());
  }

  @Test
  void brackets_that_cannot_be_are_refused() {
    Design design = Design.withIntercept(List.of("x"), new double[] {1, 2, 2, 3});
    BinomialSample sample = BinomialSample.of(design, 0, 1, 1, 0);

    assertThatIllegalArgumentException()
        .isThrownBy(() -> sample.withBrackets(List.of(new Bracket(1, 0))))
        .withMessage(
            "An event must come between two looks at different covariates, not so in rows 2 and"
                + " 1.");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> sample.withBrackets(List.of(new Bracket(0, 1), new Bracket(0, 2))))
        .withMessage("A row must belong to one unit, not to two.");
  }

  @Test
  void a_bracket_goes_with_either_of_its_rows() {
    Design design = Design.withIntercept(List.of("x"), new double[] {1, 2, 2, 3});
    BinomialSample sample =
        BinomialSample.of(design, 0, 1, 1, 0).withBrackets(List.of(new Bracket(0, 2)));

    assertThat(sample.rows(1, 0, 2).brackets()).containsExactly(new Bracket(1, 2));
    assertThat(sample.without(2).brackets()).isEmpty();
  }

  private static BinomialSample sample(ReferenceCase reference, boolean joined) {
    List<String> family = reference.labels("family");
    double[] fluence = reference.numbers("log10_fluence");
    double[] pulses = reference.numbers("log10_pulses");
    List<Object> without = reference.column("last_passes_uncleared");
    List<Object> with = reference.column("first_passes_cleared");
    List<double[]> rows = new ArrayList<>();
    List<Integer> outcomes = new ArrayList<>();
    List<Bracket> brackets = new ArrayList<>();
    for (int i = 0; i < family.size(); i++) {
      for (Object passes : Arrays.asList(without.get(i), with.get(i))) {
        if (passes != null) {
          rows.add(
              new double[] {
                1,
                family.get(i).equals("B") ? 1 : 0,
                family.get(i).equals("C") ? 1 : 0,
                fluence[i],
                pulses[i],
                Math.log(((Number) passes).doubleValue())
              });
          outcomes.add(passes == with.get(i) ? 1 : 0);
        }
      }
      if (joined && without.get(i) != null && with.get(i) != null) {
        brackets.add(new Bracket(rows.size() - 2, rows.size() - 1));
      }
    }
    Design design =
        Design.of(
            List.of(Design.INTERCEPT, "familyB", "familyC", "log10_fluence", "log10_pulses", TIME),
            rows.toArray(double[][]::new));
    return BinomialSample.of(design, IntStream.range(0, rows.size()).map(outcomes::get).toArray())
        .withBrackets(brackets);
  }
}
