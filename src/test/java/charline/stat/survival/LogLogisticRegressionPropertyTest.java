package charline.stat.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import charline.stat.interval.Bound;
import charline.stat.linear.Design;
import charline.stat.linear.Term;
import charline.stat.optimisation.TwiceDifferentiableFunction;
import charline.stat.survival.LogLogisticOutcome.NoLogLogisticFit;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What must hold for any times, tried on seeded ones, and what is refused. */
class LogLogisticRegressionPropertyTest {
  private static final int ROWS = 60;
  private static final double NEVER = Double.POSITIVE_INFINITY;

  /** One covariate and looks at 1, 2, 4, 8 and 16. */
  private record Data(double[] x, double[] after, double[] by) {
    static Data seeded(long seed) {
      return seeded(seed, ROWS);
    }

    static Data seeded(long seed, int rows) {
      Random random = new Random(seed);
      double[] x = new double[rows];
      double[] after = new double[rows];
      double[] by = new double[rows];
      for (int i = 0; i < rows; i++) {
        x[i] = random.nextDouble();
        double u = random.nextDouble();
        double time = Math.exp(2 - 1.5 * x[i] + 0.4 * Math.log(u / (1 - u)));
        by[i] = NEVER;
        for (double look = 1; look <= 16; look *= 2) {
          if (time <= look) {
            by[i] = look;
            break;
          }
          after[i] = look;
        }
      }
      return new Data(x, after, by);
    }

    LogLogisticFit fit() {
      return (LogLogisticFit)
          LogLogisticRegression.withDefaults().fit(design(), CensoredTimes.between(after, by));
    }

    Design design() {
      return Design.withIntercept(List.of("x"), x);
    }
  }

  @Test
  void the_seeded_times_are_of_every_censored_kind() {
    Data data = Data.seeded(1);
    CensoredTimes times = CensoredTimes.between(data.after(), data.by());

    assertThat(times.count(CensoredTimes.Kind.LEFT)).isPositive();
    assertThat(times.count(CensoredTimes.Kind.RIGHT)).isPositive();
    assertThat(times.count(CensoredTimes.Kind.INTERVAL)).isPositive();
  }

  /** Rounding of so long a sum is larger than what the last steps gain. */
  @ParameterizedTest
  @CsvSource({"4000, 1", "4000, 2", "5000, 1", "5000, 2", "20000, 1"})
  void thousands_of_rows_are_fitted_in_a_few_steps(int rows, long seed) {
    Data data = Data.seeded(seed, rows);

    LogLogisticOutcome outcome =
        LogLogisticRegression.withDefaults()
            .withSteps(12)
            .fit(data.design(), CensoredTimes.between(data.after(), data.by()));

    assertThat(outcome).isInstanceOf(LogLogisticFit.class);
    LogLogisticFit fit = (LogLogisticFit) outcome;
    double[] truth = {2, -1.5};
    for (int j = 0; j < truth.length; j++) {
      Term term = fit.terms().get(j);
      assertThat(term.estimate()).isCloseTo(truth[j], within(4 * term.standardError()));
    }
    assertThat(Math.log(fit.scale() / 0.4)).isCloseTo(0, within(4 * fit.logScaleError()));
  }

  @Test
  void the_order_of_rows_does_not_matter() {
    Data data = Data.seeded(1);
    int[] reversed = IntStream.range(0, ROWS).map(i -> ROWS - 1 - i).toArray();
    LogLogisticFit fit =
        new Data(pick(data.x(), reversed), pick(data.after(), reversed), pick(data.by(), reversed))
            .fit();

    assertThat(fit.scale()).isCloseTo(data.fit().scale(), within(1e-10));
    assertThat(fit.logLikelihood()).isCloseTo(data.fit().logLikelihood(), within(1e-10));
  }

  @Test
  void another_unit_of_time_shifts_only_the_intercept() {
    Data data = Data.seeded(2);
    LogLogisticFit before = data.fit();
    LogLogisticFit after = new Data(data.x(), times60(data.after()), times60(data.by())).fit();

    assertThat(after.terms().get(0).estimate())
        .isCloseTo(before.terms().get(0).estimate() + Math.log(60), within(1e-9));
    assertThat(after.terms().get(1).estimate())
        .isCloseTo(before.terms().get(1).estimate(), within(1e-9));
    assertThat(after.scale()).isCloseTo(before.scale(), within(1e-9));
    assertThat(after.logLikelihood()).isCloseTo(before.logLikelihood(), within(1e-9));
  }

  /** A look just before and just after is worth the density times the gap. */
  @Test
  void a_very_narrow_interval_is_an_exact_time() {
    double[] x = {0, 0, 1, 1, 0.5, 0.2};
    double[] times = {3, 5, 2, 1, 4, 2.5};
    double gap = 1e-6;
    double[] just = Arrays.stream(times).map(t -> t * (1 + gap)).toArray();
    LogLogisticFit exact = new Data(x, times, times).fit();
    LogLogisticFit narrow = new Data(x, times, just).fit();

    assertThat(narrow.scale()).isCloseTo(exact.scale(), within(1e-5));
    double gaps = Arrays.stream(times).map(t -> Math.log(t * gap)).sum();
    assertThat(narrow.logLikelihood()).isCloseTo(exact.logLikelihood() + gaps, within(1e-4));
  }

  @Test
  void slopes_and_bends_agree_with_differences() {
    Data data = Data.seeded(3);
    double[] by = data.by().clone();
    double[] after = data.after().clone();
    after[0] = by[0] = 3; // and one exact time
    LogLogisticLikelihood likelihood =
        new LogLogisticLikelihood(data.design(), CensoredTimes.between(after, by));
    double[] point = {4, -2, 1.7};
    TwiceDifferentiableFunction.Local here = likelihood.local(point);
    for (int j = 0; j < point.length; j++) {
      double[] up = point.clone();
      double[] down = point.clone();
      up[j] += 1e-5;
      down[j] -= 1e-5;
      assertThat((likelihood.value(up) - likelihood.value(down)) / 2e-5)
          .isCloseTo(here.gradient()[j], within(1e-5));
      for (int k = 0; k < point.length; k++) {
        assertThat(
                (likelihood.local(up).gradient()[k] - likelihood.local(down).gradient()[k]) / 2e-5)
            .isCloseTo(here.hessian()[j][k], within(1e-5));
      }
    }
  }

  @Test
  void more_confidence_never_narrows_a_quantile() {
    LogLogisticFit fit = Data.seeded(4).fit();
    double width = 0;
    for (double confidence : new double[] {0.5, 0.8, 0.9, 0.95, 0.99}) {
      var limits = fit.quantile(0.9, confidence, 1, 0.5).wald();
      double next = ((Bound.At) limits.upper()).value() - ((Bound.At) limits.lower()).value();
      assertThat(next).isGreaterThan(width);
      width = next;
    }
  }

  @Test
  void times_that_allow_no_estimate_say_why() {
    assertNone(
        new double[] {2, 3, 4},
        new double[] {NEVER, NEVER, NEVER},
        "Some event must have been seen, but all 3 times are open-ended; look longer.");
    assertNone(
        new double[] {0, 0, 0},
        new double[] {2, 3, 4},
        "Some look must have come before the event, but all 3 events were there at the first look;"
            + " look earlier.");
    assertNone(
        new double[] {1, 2, 3},
        new double[] {4, 5, 6},
        "Times must scatter about the line, but a line runs through every interval and the scale"
            + " would shrink to 0; look more often or add times.");
  }

  private static void assertNone(double[] after, double[] by, String sentence) {
    assertThat(
            LogLogisticRegression.withDefaults()
                .fit(Design.interceptOnly(after.length), CensoredTimes.between(after, by)))
        .isEqualTo(new NoLogLogisticFit(sentence));
  }

  @Test
  void times_on_a_line_have_no_scale() {
    Design design = Design.withIntercept(List.of("x"), new double[] {0, 1, 2});
    double[] times = {1, Math.exp(1), Math.exp(2)};

    assertThat(
            LogLogisticRegression.withDefaults().fit(design, CensoredTimes.between(times, times)))
        .isInstanceOf(NoLogLogisticFit.class);
  }

  @Test
  void impossible_times_are_pointed_at() {
    assertThatThrownBy(() -> CensoredTimes.between(new double[] {1, 5}, new double[] {2, 4}))
        .hasMessage(
            "A time must lie after one look and by a later one, not after 5.0 and by 4.0 in row 2;"
                + " correct the row or leave it out.");
    assertThatThrownBy(() -> CensoredTimes.between(new double[] {0}, new double[] {NEVER}))
        .hasMessageStartingWith("A time must lie after one look");
    assertThatThrownBy(() -> CensoredTimes.between(new double[] {Double.NaN}, new double[] {2}))
        .hasMessageStartingWith("A time must lie after one look");
    assertThatThrownBy(() -> CensoredTimes.between(new double[] {1}, new double[] {2, 3}))
        .hasMessage("Both ends must have one length, not 1 and 2.");
    assertThatThrownBy(() -> CensoredTimes.between(new double[0], new double[0]))
        .hasMessage("There must be at least one time, not none.");
    assertThatThrownBy(
            () ->
                LogLogisticRegression.withDefaults()
                    .fit(
                        Design.interceptOnly(3),
                        CensoredTimes.between(new double[] {1}, new double[] {2})))
        .hasMessage("There must be one time per row: 3 rows, but 1 times.");
  }

  private static double[] pick(double[] values, int[] rows) {
    return Arrays.stream(rows).mapToDouble(i -> values[i]).toArray();
  }

  private static double[] times60(double[] values) {
    return Arrays.stream(values).map(v -> 60 * v).toArray();
  }
}
