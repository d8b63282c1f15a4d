package charline.stat.regression;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import charline.stat.inverse.DoseAtRisk;
import charline.stat.linear.Design;
import charline.stat.linear.LineFit;
import charline.stat.linear.StraightLine;
import charline.stat.mixed.RandomIntercept;
import charline.stat.mixed.RandomInterceptOutcome;
import charline.stat.mixed.RandomInterceptOutcome.NoRandomInterceptFit;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Bad input gets a sentence, never a number. */
class RegressionInputTest {
  private static final Design DOSES =
      Design.withIntercept(List.of("dose"), new double[] {1, 2, 3, 4});

  private static void refused(Runnable work, String sentence) {
    assertThatThrownBy(work::run).isInstanceOf(IllegalArgumentException.class).hasMessage(sentence);
  }

  @Test
  void one_row_is_not_enough() {
    refused(
        () -> Design.withIntercept(List.of("dose"), new double[] {1}),
        "There must be at least as many rows as coefficients: 2 coefficients [(Intercept), dose],"
            + " but 1 row.");
  }

  @Test
  void columns_that_depend_on_each_other_are_named() {
    refused(
        () ->
            Design.withIntercept(
                List.of("mm_s", "m_s"),
                new double[] {100, 200, 400, 300},
                new double[] {0.1, 0.2, 0.4, 0.3}),
        "Column 'm_s' must not be a combination of [(Intercept), mm_s]; leave one of them out.");
    refused(
        () -> Design.withIntercept(List.of("dose"), new double[] {2, 2, 2}),
        "Column 'dose' must not be a combination of [(Intercept)]; leave one of them out.");
    refused(
        () -> Design.withIntercept(List.of("dose"), new double[] {0, 0, 0}),
        "Column 'dose' must not be 0 in every row; leave it out.");
  }

  @Test
  void numbers_that_are_none_are_pointed_at() {
    refused(
        () -> Design.withIntercept(List.of("dose"), new double[] {1, Double.NaN, 3}),
        "Column 'dose' must be a finite number in row 2, not NaN; leave the row out.");
  }

  @Test
  void lengths_must_agree() {
    refused(
        () -> Design.withIntercept(List.of("a", "b"), new double[] {1, 2, 3}, new double[] {1, 2}),
        "Columns must have one length: 'a' has 3 values, but 'b' has 2.");
    refused(
        () -> BinomialSample.of(DOSES, 0, 1, 0),
        "There must be one of the outcomes per row: 4 rows, but 3 outcomes.");
    refused(
        () -> Design.withIntercept(List.of("a"), new double[] {1, 2}, new double[] {1, 3}),
        "There must be one name per column: 2 columns, but 1 names [a].");
  }

  @Test
  void impossible_counts_are_pointed_at() {
    refused(
        () -> BinomialSample.of(DOSES, 0, 1, 2, 0),
        "An outcome must be 0 or 1, not 2 in row 3; give counts with grouped(...).");
    refused(
        () -> BinomialSample.grouped(DOSES, new int[] {0, 1, 3, 0}, new int[] {2, 2, 2, 2}),
        "Events must be between 0 and the 2 trials, not 3 in row 3.");
    refused(
        () -> BinomialSample.grouped(DOSES, new int[] {0, 1, 1, 0}, new int[] {2, 0, 2, 2}),
        "Trials must be 1 or more, not 0 in row 2; leave the row out.");
  }

  @Test
  void a_constant_outcome_has_no_maximum_likelihood_but_a_penalised_fit() {
    BinomialSample none = BinomialSample.of(DOSES, 0, 0, 0, 0);
    BinomialSample all = BinomialSample.of(DOSES, 1, 1, 1, 1);

    assertThat(((Separated) BinomialRegression.withDefaults().fit(none)).message())
        .isEqualTo(
            "Maximum likelihood needs outcomes that overlap, but no row has an event"
                + " (-(Intercept) would run to infinity); fit with Firth's penalised likelihood"
                + " instead.");
    assertThat(((Separated) BinomialRegression.withDefaults().fit(all)).message())
        .contains("every trial has the event");
    BinomialFit firth =
        (BinomialFit) BinomialRegression.withDefaults().with(Estimator.FIRTH_PENALISED).fit(none);
    assertThat(firth.risk(0)).isBetween(0.0, 0.3);
  }

  @Test
  void separated_outcomes_are_told_from_diverged_ones() {
    Separated separated =
        (Separated) BinomialRegression.withDefaults().fit(BinomialSample.of(DOSES, 0, 0, 1, 1));

    assertThat(separated.message())
        .isEqualTo(
            "Maximum likelihood needs outcomes that overlap, but the outcomes are separated"
                + " completely (-(Intercept), +dose would run to infinity); fit with Firth's"
                + " penalised likelihood instead.");
  }

  @Test
  void repeated_rows_are_no_obstacle() {
    Design design = Design.withIntercept(List.of("dose"), new double[] {1, 1, 1, 2, 2, 2});
    BinomialFit fit =
        (BinomialFit)
            BinomialRegression.withDefaults().fit(BinomialSample.of(design, 0, 1, 0, 1, 1, 0));

    assertThat(fit.risk(0)).isCloseTo(1 / 3.0, within(1e-12));
    assertThat(fit.risk(5)).isCloseTo(2 / 3.0, within(1e-12));
  }

  @Test
  void a_dose_needs_every_other_covariate() {
    Design design =
        Design.withIntercept(
            List.of("dose", "heat"), new double[] {1, 2, 3, 4, 5}, new double[] {3, 1, 4, 1, 5});
    BinomialFit fit =
        (BinomialFit)
            BinomialRegression.withDefaults()
                .with(Estimator.FIRTH_PENALISED)
                .fit(BinomialSample.of(design, 0, 0, 1, 0, 1));

    refused(
        () -> DoseAtRisk.of("dose", 0.05).estimate(fit),
        "Every other covariate needs a value, but 'heat' has none; state it with given(...).");
    refused(
        () -> DoseAtRisk.of("power", 0.05).estimate(fit),
        "No column 'power'; this design has [(Intercept), dose, heat].");
    refused(
        () -> DoseAtRisk.of("dose", 5),
        "Risk must lie between 0 and 1, not 5.0; write 0.05 for 5 %.");
    refused(
        () -> DoseAtRisk.of("dose", 0.05).withConfidence(95),
        "Confidence must lie between 0 and 1, not 95.0; write 0.95 for 95 %.");
  }

  @Test
  void groups_must_fit_the_rows() {
    BinomialSample sample = BinomialSample.of(DOSES, 0, 1, 0, 1);

    refused(
        () -> RandomIntercept.withDefaults().fit(sample, List.of("a", "b")),
        "There must be one group label per row: 4 rows, but 2 labels.");
    refused(
        () -> RandomIntercept.withDefaults().fit(sample, List.of("a", "a", "a", "a")),
        "A random intercept needs at least 2 groups, not only 'a'; fit without groups.");
    assertThat(
            ((NoRandomInterceptFit)
                    RandomIntercept.withDefaults()
                        .fit(BinomialSample.of(DOSES, 0, 0, 1, 1), List.of("a", "a", "b", "b")))
                .cause())
        .isEqualTo(NoRandomInterceptFit.Cause.SEPARATED);
  }

  @Test
  void groups_that_are_all_event_or_all_none_give_no_deviation() {
    int groups = 6;
    int each = 10;
    double[] dose = new double[groups * each];
    int[] outcomes = new int[groups * each];
    String[] labels = new String[groups * each];
    for (int i = 0; i < outcomes.length; i++) {
      dose[i] = i % each;
      outcomes[i] = (i / each) % 2;
      labels[i] = "board " + i / each;
    }
    RandomInterceptOutcome outcome =
        RandomIntercept.withDefaults()
            .fit(
                BinomialSample.of(Design.withIntercept(List.of("dose"), dose), outcomes),
                List.of(labels));

    assertThat(outcome)
        .isEqualTo(
            new NoRandomInterceptFit(
                NoRandomInterceptFit.Cause.DEVIATION_UNBOUNDED,
                "The deviation between groups must have a likeliest value up to 30.0, but the"
                    + " likelihood still grows there: groups are small, or nearly all event or all"
                    + " none; fit without groups."));
  }

  @Test
  void a_line_needs_three_points_at_different_places() {
    refused(
        () -> StraightLine.fit(new double[] {1, 2}, new double[] {1, 2}),
        "A line with errors needs at least 3 points, not 2; measure more.");
    refused(
        () -> StraightLine.fit(new double[] {1, 2, 3}, new double[] {1, 2}),
        "x and y must have one length, not 3 and 2.");
    refused(
        () -> StraightLine.fit(new double[] {2, 2, 2}, new double[] {1, 2, 3}),
        "x must vary to draw a line, but every value is 2.0; measure at another x.");
    refused(
        () -> StraightLine.fit(new double[] {1, 2, 3}, new double[] {1, Double.NaN, 3}),
        "Points must be finite numbers, not (2.0, NaN) in row 2; leave the row out.");
  }

  @Test
  void a_level_line_meets_zero_nowhere() {
    LineFit level = StraightLine.fit(new double[] {1, 2, 3}, new double[] {4, 4, 4});

    assertThat(level.crossing(0.95)).isEmpty();
    assertThat(level.rSquared()).isZero();
  }
}
