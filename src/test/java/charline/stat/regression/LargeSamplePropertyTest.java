package charline.stat.regression;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.stat.distribution.Logistic;
import charline.stat.linear.Design;
import charline.stat.linear.Vectors;
import charline.stat.optimisation.HyperplaneRestriction;
import charline.stat.optimisation.NewtonMaximizer;
import charline.stat.optimisation.TwiceDifferentiableFunction;
import java.util.List;
import java.util.Random;
import java.util.function.IntPredicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What spares large samples time must not change an answer. Seeded. */
class LargeSamplePropertyTest {
  private static final NewtonMaximizer MAXIMIZER =
      NewtonMaximizer.withDefaults().withLongestStep(4).withSteps(500);

  /** One covariate about 0; above it the event is certain, but in rows that say otherwise. */
  private static BinomialSample split(int rows, IntPredicate otherwise) {
    Random random = new Random(rows);
    double[] x = new double[rows];
    int[] y = new int[rows];
    for (int i = 0; i < rows; i++) {
      x[i] = random.nextGaussian();
      y[i] = x[i] > 0 != otherwise.test(i) ? 1 : 0;
    }
    return BinomialSample.of(Design.withIntercept(List.of("x"), x), y);
  }

  private static BinomialSample overlapping(int rows, long seed) {
    Random random = new Random(seed);
    double[][] x = new double[2][rows];
    int[] trials = new int[rows];
    int[] events = new int[rows];
    for (int i = 0; i < rows; i++) {
      x[0][i] = random.nextGaussian();
      x[1][i] = random.nextGaussian();
      trials[i] = 1 + (i % 3 == 0 ? random.nextInt(4) : 0);
      double risk = 1 / (1 + Math.exp(1 - 1.2 * x[0][i] + 3 * x[1][i]));
      for (int t = 0; t < trials[i]; t++) {
        events[i] += random.nextDouble() < risk ? 1 : 0;
      }
    }
    return BinomialSample.grouped(Design.withIntercept(List.of("x1", "x2"), x), events, trials);
  }

  @ParameterizedTest
  @ValueSource(ints = {30, 30_000})
  void the_quick_sums_are_those_of_one_row_after_the_other(int rows) {
    BinomialSample sample = overlapping(rows, 1);
    for (double scale : new double[] {0, 1, 30}) {
      double[] point = {-0.4 * scale, 0.7 * scale, -scale};
      TwiceDifferentiableFunction.Local quick =
          new LogitLikelihood(GroupedRows.of(sample)).local(point);
      TwiceDifferentiableFunction.Local plain = plain(sample, point);
      assertThat(quick.value()).isCloseTo(plain.value(), within(1e-12 * -plain.value()));
      for (int r = 0; r < 3; r++) {
        assertThat(quick.gradient()[r]).isCloseTo(plain.gradient()[r], within(1e-10 * rows));
        for (int s = 0; s < 3; s++) {
          assertThat(quick.hessian()[r][s]).isCloseTo(plain.hessian()[r][s], within(1e-10 * rows));
        }
      }
    }
  }

  /** Value and slopes of the logistic log-likelihood by its definition, a row at a time. */
  private static TwiceDifferentiableFunction.Local plain(BinomialSample sample, double[] point) {
    double[][] q = sample.design().basis().q();
    double value = 0;
    double[] gradient = new double[point.length];
    double[][] hessian = new double[point.length][point.length];
    for (int i = 0; i < q.length; i++) {
      double eta = Vectors.dot(q[i], point);
      int events = sample.events(i);
      int others = sample.trials(i) - events;
      value += events * Logistic.logCdf(eta) + others * Logistic.logCdf(-eta);
      for (int r = 0; r < point.length; r++) {
        gradient[r] += (events * Logistic.cdf(-eta) - others * Logistic.cdf(eta)) * q[i][r];
        for (int s = 0; s < point.length; s++) {
          hessian[r][s] -= sample.trials(i) * Logistic.density(eta) * q[i][r] * q[i][s];
        }
      }
    }
    return new TwiceDifferentiableFunction.Local(value, gradient, hessian);
  }

  @Test
  void a_start_from_some_rows_ends_where_all_rows_are_level() {
    BinomialSample sample = overlapping(30_000, 2);
    BinomialFit fit = (BinomialFit) BinomialRegression.withDefaults().fit(sample);
    double[] top = sample.design().basis().inward(fit.coefficients());
    assertThat(plain(sample, top).gradient()).containsExactly(new double[3], within(1e-6));
  }

  @Test
  void a_large_separated_sample_is_told() {
    FitOutcome outcome = BinomialRegression.withDefaults().fit(split(30_000, i -> false));
    assertThat(outcome).isInstanceOf(Separated.class);
  }

  @Test
  void a_large_sample_that_overlaps_beside_the_rows_looked_at_first_is_fitted() {
    FitOutcome outcome =
        BinomialRegression.withDefaults().fit(split(30_000, i -> i % 20 == 7 && i % 3 == 0));
    assertThat(outcome).isInstanceOf(BinomialFit.class);
  }

  @Test
  void overlap_is_never_proved_where_the_linear_programme_finds_separation() {
    Random random = new Random(3);
    int proved = 0;
    int separated = 0;
    for (int trial = 0; trial < 300; trial++) {
      int rows = 8 + random.nextInt(60);
      BinomialSample sample = overlapping(rows, 100 + trial);
      GroupedRows counts = GroupedRows.of(sample);
      boolean found = Separation.in(sample).kind() != Separation.NONE;
      boolean excluded =
          MAXIMIZER.maximize(new LogitLikelihood(counts), new double[3])
                  instanceof NewtonMaximizer.Maximum maximum
              && Separation.excludedBy(maximum, counts);
      assertThat(found && excluded).as("sample " + trial).isFalse();
      proved += excluded ? 1 : 0;
      separated += found ? 1 : 0;
    }
    assertThat(proved).isGreaterThan(100);
    assertThat(separated).isGreaterThan(10);
  }

  @Test
  void no_start_climbs_above_a_maximum_that_is_surely_the_highest() {
    Random random = new Random(4);
    int sure = 0;
    int unsure = 0;
    for (int rows : new int[] {6, 12, 25, 50, 200, 800, 2000, 4000}) {
      FirthLikelihood firth = new FirthLikelihood(overlapping(rows, rows));
      for (double level : new double[] {-1, 0, 0.5, 1}) {
        HyperplaneRestriction plane =
            HyperplaneRestriction.to(firth, new double[] {0, 1, 0}, level);
        if (!(MAXIMIZER.maximize(plane, new double[2]) instanceof NewtonMaximizer.Maximum first)) {
          continue;
        }
        if (!firth.surelyHighest(plane.whole(first.point()))) {
          unsure++;
          continue;
        }
        sure++;
        for (int start = 0; start < 30; start++) {
          double reach = 0.5 * (1 + start);
          double[] from = {reach * random.nextGaussian(), reach * random.nextGaussian()};
          if (MAXIMIZER.maximize(plane, from) instanceof NewtonMaximizer.Maximum other) {
            assertThat(other.value()).isLessThanOrEqualTo(first.value() + 1e-9);
          }
        }
      }
    }
    assertThat(sure).isGreaterThan(4);
    assertThat(unsure).isGreaterThan(4);
  }
}
