package charline.stat.regression;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.stat.distribution.Logistic;
import charline.stat.interval.Bound;
import charline.stat.interval.Interval;
import charline.stat.inverse.Dose;
import charline.stat.inverse.DoseAtRisk;
import charline.stat.inverse.ProfileLimits;
import charline.stat.linear.Design;
import charline.stat.mixed.IntegratedLikelihood;
import charline.stat.optimisation.TwiceDifferentiableFunction;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What must hold for any data, tried on seeded ones. */
class BinomialRegressionPropertyTest {
  private static final int ROWS = 40;

  /** Two covariates of very different size; a rising risk with overlap. */
  private record Data(double[] dose, double[] heat, int[] outcomes) {
    static Data seeded(long seed) {
      Random random = new Random(seed);
      double[] dose = new double[ROWS];
      double[] heat = new double[ROWS];
      int[] outcomes = new int[ROWS];
      for (int i = 0; i < ROWS; i++) {
        dose[i] = 2 * random.nextDouble();
        heat[i] = 1000 + 50 * random.nextGaussian();
        double eta = -2 + 2 * dose[i] + 0.01 * (heat[i] - 1000);
        outcomes[i] = random.nextDouble() < 1 / (1 + Math.exp(-eta)) ? 1 : 0;
      }
      return new Data(dose, heat, outcomes);
    }

    BinomialSample sample() {
      return BinomialSample.of(Design.withIntercept(List.of("dose", "heat"), dose, heat), outcomes);
    }
  }

  private static BinomialFit fit(Estimator estimator, BinomialSample sample) {
    FitOutcome outcome = BinomialRegression.withDefaults().with(estimator).fit(sample);
    assertThat(outcome).isInstanceOf(BinomialFit.class);
    return (BinomialFit) outcome;
  }

  private static void assertClose(double[] actual, double[] expected, double relative) {
    assertThat(actual).hasSameSizeAs(expected);
    for (int j = 0; j < actual.length; j++) {
      assertThat(actual[j]).isCloseTo(expected[j], within(relative * (1 + Math.abs(expected[j]))));
    }
  }

  @ParameterizedTest
  @EnumSource(Estimator.class)
  void the_order_of_rows_does_not_matter(Estimator estimator) {
    BinomialSample sample = Data.seeded(1).sample();
    List<Integer> order = IntStream.range(0, ROWS).boxed().collect(Collectors.toList());
    Collections.shuffle(order, new Random(2));

    BinomialFit shuffled =
        fit(estimator, sample.rows(order.stream().mapToInt(Integer::intValue).toArray()));

    assertClose(shuffled.coefficients(), fit(estimator, sample).coefficients(), 1e-9);
  }

  @ParameterizedTest
  @ValueSource(doubles = {1e-6, 1e6})
  void a_change_of_unit_changes_only_the_unit(double unit) {
    Data data = Data.seeded(3);
    BinomialFit before = fit(Estimator.FIRTH_PENALISED, data.sample());
    double[] inOtherUnit = Arrays.stream(data.dose()).map(x -> x * unit).toArray();
    BinomialFit after =
        fit(
            Estimator.FIRTH_PENALISED,
            new Data(inOtherUnit, data.heat(), data.outcomes()).sample());

    assertClose(after.risks(), before.risks(), 1e-9);
    assertThat(after.term("dose").estimate() * unit)
        .isCloseTo(before.term("dose").estimate(), within(1e-8));
    Interval original = ProfileLimits.withDefaults().of(before, "dose").interval();
    Interval changed = ProfileLimits.withDefaults().of(after, "dose").interval();
    assertThat(value(changed.lower()) * unit).isCloseTo(value(original.lower()), within(1e-6));
    assertThat(value(changed.upper()) * unit).isCloseTo(value(original.upper()), within(1e-6));
  }

  @ParameterizedTest
  @EnumSource(Estimator.class)
  void joined_rows_give_the_fit_of_separate_rows(Estimator estimator) {
    double[] doses = {1, 2, 3, 4};
    int[] events = {1, 2, 4, 7};
    int[] trials = {6, 6, 7, 8};
    double[] repeated =
        IntStream.range(0, 4)
            .boxed()
            .flatMap(i -> Collections.nCopies(trials[i], doses[i]).stream())
            .mapToDouble(Double::doubleValue)
            .toArray();
    int[] outcomes =
        IntStream.range(0, 4)
            .flatMap(i -> IntStream.range(0, trials[i]).map(k -> k < events[i] ? 1 : 0))
            .toArray();

    BinomialFit joined =
        fit(
            estimator,
            BinomialSample.grouped(Design.withIntercept(List.of("dose"), doses), events, trials));
    BinomialFit separate =
        fit(
            estimator,
            BinomialSample.of(Design.withIntercept(List.of("dose"), repeated), outcomes));

    assertClose(joined.coefficients(), separate.coefficients(), 1e-9);
    assertThat(joined.objective()).isCloseTo(separate.objective(), within(1e-9));
    Dose one = (Dose) DoseAtRisk.of("dose", 0.2).estimate(joined);
    Dose other = (Dose) DoseAtRisk.of("dose", 0.2).estimate(separate);
    assertThat(value(one.cautious())).isCloseTo(value(other.cautious()), within(1e-7));
  }

  /** By differences of the objective, which share nothing with the slopes that the climb used. */
  @ParameterizedTest
  @EnumSource(Estimator.class)
  void the_objective_is_level_at_the_answer(Estimator estimator) {
    BinomialSample sample = Data.seeded(4).sample();
    BinomialFit fit = fit(estimator, sample);
    double[] top = sample.design().basis().inward(fit.coefficients());
    var objective = fit.method().objective(sample);
    for (int j = 0; j < top.length; j++) {
      double[] above = top.clone();
      double[] below = top.clone();
      above[j] += 1e-4;
      below[j] -= 1e-4;
      double slope = (objective.value(above) - objective.value(below)) / 2e-4;
      assertThat(slope).isCloseTo(0, within(1e-6));
      assertThat(objective.value(top)).isGreaterThan(objective.value(above));
      assertThat(objective.value(top)).isGreaterThan(objective.value(below));
    }
  }

  /** Slopes and bends of every objective against differences, away from the maximum. */
  @Test
  void derivatives_agree_with_differences() {
    BinomialSample sample = Data.seeded(5).sample();
    List<TwiceDifferentiableFunction> objectives =
        List.of(
            new FirthLikelihood(sample),
            new LogitLikelihood(GroupedRows.of(sample)),
            new IntegratedLikelihood(sample, groupsOfFour(), 10, 30));
    for (TwiceDifferentiableFunction objective : objectives) {
      double[] point = Arrays.copyOf(new double[] {-0.4, 0.7, 0.3, 0.8}, objective.dimension());
      TwiceDifferentiableFunction.Local here = objective.local(point);
      for (int j = 0; j < point.length; j++) {
        double[] above = point.clone();
        double[] below = point.clone();
        above[j] += 1e-5;
        below[j] -= 1e-5;
        assertThat((objective.value(above) - objective.value(below)) / 2e-5)
            .as(objective.getClass().getSimpleName() + " slope " + j)
            .isCloseTo(here.gradient()[j], within(1e-6));
        for (int k = 0; k < point.length; k++) {
          double bend =
              (objective.local(above).gradient()[k] - objective.local(below).gradient()[k]) / 2e-5;
          assertThat(bend)
              .as(objective.getClass().getSimpleName() + " bend " + j + " " + k)
              .isCloseTo(here.hessian()[j][k], within(1e-5));
        }
      }
    }
  }

  private static int[] groupsOfFour() {
    return IntStream.range(0, ROWS).map(i -> i / 4).toArray();
  }

  @Test
  void more_confidence_never_narrows_an_interval() {
    BinomialFit fit = fit(Estimator.FIRTH_PENALISED, Data.seeded(6).sample());
    double lowerCoefficient = Double.POSITIVE_INFINITY;
    double upperCoefficient = Double.NEGATIVE_INFINITY;
    double lowerDose = Double.POSITIVE_INFINITY;
    double upperDose = Double.NEGATIVE_INFINITY;
    for (double confidence : new double[] {0.5, 0.8, 0.9, 0.95, 0.99}) {
      Interval coefficient =
          ProfileLimits.withDefaults().withConfidence(confidence).of(fit, "dose").interval();
      Dose dose =
          (Dose)
              DoseAtRisk.of("dose", 0.5)
                  .given("heat", 1000)
                  .withConfidence(confidence)
                  .estimate(fit);
      assertThat(value(coefficient.lower())).isLessThan(lowerCoefficient);
      assertThat(value(coefficient.upper())).isGreaterThan(upperCoefficient);
      assertThat(value(dose.profile().lower())).isLessThan(lowerDose);
      assertThat(value(dose.profile().upper())).isGreaterThan(upperDose);
      lowerCoefficient = value(coefficient.lower());
      upperCoefficient = value(coefficient.upper());
      lowerDose = value(dose.profile().lower());
      upperDose = value(dose.profile().upper());
    }
  }

  /**
   * Seen from the other side: at the cautious dose, the one-sided upper limit of the risk is the
   * risk that was asked for. With doses counted from there the intercept is that risk's logit.
   */
  @ParameterizedTest
  @EnumSource(Estimator.class)
  void at_the_cautious_dose_the_risk_may_just_be_as_high_as_asked(Estimator estimator) {
    Data data = Data.seeded(7);
    Dose dose =
        (Dose)
            DoseAtRisk.of("dose", 0.10).given("heat", 1000).estimate(fit(estimator, data.sample()));
    double cautious = value(dose.cautious());
    double[] counted = Arrays.stream(data.dose()).map(x -> x - cautious).toArray();
    double[] centred = Arrays.stream(data.heat()).map(x -> x - 1000).toArray();

    BinomialFit fromThere = fit(estimator, new Data(counted, centred, data.outcomes()).sample());

    Interval logit =
        ProfileLimits.withDefaults().withConfidence(0.90).of(fromThere, "(Intercept)").interval();
    assertThat(value(logit.upper())).isCloseTo(Logistic.quantile(0.10), within(1e-5));
  }

  @Test
  void swapping_event_and_no_event_mirrors_the_fit() {
    Data data = Data.seeded(8);
    int[] swapped = Arrays.stream(data.outcomes()).map(y -> 1 - y).toArray();
    double[] before = fit(Estimator.FIRTH_PENALISED, data.sample()).coefficients();
    double[] after =
        fit(Estimator.FIRTH_PENALISED, new Data(data.dose(), data.heat(), swapped).sample())
            .coefficients();

    assertClose(after, Arrays.stream(before).map(b -> -b).toArray(), 1e-9);
  }

  /** With one covariate separation can be read off the sorted doses. */
  @Test
  void separation_is_found_exactly_where_sorting_finds_it() {
    Random random = new Random(9);
    int[] seen = new int[3];
    for (int trial = 0; trial < 400; trial++) {
      int rows = 3 + random.nextInt(6);
      double[] dose = new double[rows];
      int[] outcomes = new int[rows];
      for (int i = 0; i < rows; i++) {
        dose[i] = 0.1 * random.nextInt(5);
        outcomes[i] = random.nextInt(2);
      }
      if (Arrays.stream(dose).distinct().count() < 2) {
        continue;
      }
      Separation expected = bySorting(dose, outcomes);
      seen[expected.ordinal()]++;
      BinomialSample sample =
          BinomialSample.of(Design.withIntercept(List.of("dose"), dose), outcomes);

      assertThat(Separation.in(sample).kind())
          .as(Arrays.toString(dose) + Arrays.toString(outcomes))
          .isEqualTo(expected);
      assertThat(fit(Estimator.FIRTH_PENALISED, sample).separation()).isEqualTo(expected);
    }
    assertThat(Arrays.stream(seen).min().orElseThrow()).isGreaterThan(20);
  }

  private static Separation bySorting(double[] dose, int[] outcomes) {
    double lowEvent = Double.POSITIVE_INFINITY;
    double highEvent = Double.NEGATIVE_INFINITY;
    double lowOther = Double.POSITIVE_INFINITY;
    double highOther = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < dose.length; i++) {
      if (outcomes[i] == 1) {
        lowEvent = Math.min(lowEvent, dose[i]);
        highEvent = Math.max(highEvent, dose[i]);
      } else {
        lowOther = Math.min(lowOther, dose[i]);
        highOther = Math.max(highOther, dose[i]);
      }
    }
    if (lowEvent > highOther || highEvent < lowOther) {
      return Separation.COMPLETE;
    }
    boolean touch = lowEvent >= highOther || highEvent <= lowOther;
    return touch ? Separation.QUASI_COMPLETE : Separation.NONE;
  }

  @Test
  void an_overlap_of_a_millionth_is_still_an_overlap() {
    double[] dose = {1, 2, 3.000001, 3, 4, 5};
    int[] outcomes = {0, 0, 0, 1, 1, 1};
    BinomialSample sample =
        BinomialSample.of(Design.withIntercept(List.of("dose"), dose), outcomes);

    assertThat(Separation.in(sample).kind()).isEqualTo(Separation.NONE);
    BinomialFit fit = fit(Estimator.MAXIMUM_LIKELIHOOD, sample);
    assertThat(fit.coefficients()).doesNotContain(Double.NaN);
  }

  @Test
  void a_lone_covariate_without_intercept_has_profile_limits_too() {
    BinomialSample sample =
        BinomialSample.of(
            Design.of(List.of("x"), new double[][] {{1}, {2}, {-1}, {0.5}, {-2}}), 1, 1, 0, 0, 1);
    for (Estimator estimator : Estimator.values()) {
      BinomialFit fit = fit(estimator, sample);
      Interval limits = ProfileLimits.withDefaults().of(fit, "x").interval();
      assertThat(value(limits.lower())).isLessThan(fit.term("x").estimate());
      assertThat(value(limits.upper())).isGreaterThan(fit.term("x").estimate());
    }
  }

  private static double value(Bound bound) {
    assertThat(bound).isInstanceOf(Bound.At.class);
    return ((Bound.At) bound).value();
  }
}
