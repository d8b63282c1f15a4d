package charline.stat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.stat.distribution.Logistic;
import charline.stat.optimisation.NewtonMaximizer;
import charline.stat.optimisation.TwiceDifferentiableFunction;
import charline.stat.quadrature.GaussHermite;
import charline.stat.quadrature.NormalTrapezoid;
import charline.stat.sampling.WeightedDraws;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NumericsTest {
  /** Abramowitz and Stegun 1964, table 25.10, n = 3: nodes 0 and √1.5, weights of e^-x². */
  @Test
  void the_rule_is_the_tabled_one() {
    GaussHermite rule = new GaussHermite(3);
    assertThat(Math.abs(rule.node(0)) / Math.sqrt(2)).isCloseTo(1.22474487139159, within(1e-14));
    assertThat(rule.weight(0) * Math.sqrt(Math.PI)).isCloseTo(0.295408975150919, within(1e-14));
    assertThat(rule.weight(1) * Math.sqrt(Math.PI)).isCloseTo(1.181635900603677, within(1e-14));
  }

  /** Moments of the standard normal: 1, 0, 1, 0, 3, ..., (2m - 1)!!. */
  @Test
  void the_rule_gives_the_normal_moments() {
    GaussHermite rule = new GaussHermite(15);
    double doubleFactorial = 1;
    for (int m = 1; m <= 14; m++) {
      doubleFactorial *= 2 * m - 1;
      int power = 2 * m;
      double moment =
          IntStream.range(0, rule.points())
              .mapToDouble(q -> rule.weight(q) * Math.pow(rule.node(q), power))
              .sum();
      assertThat(moment / doubleFactorial).as("moment " + power).isCloseTo(1, within(1e-10));
    }
  }

  /** The same moments; what lies beyond six standard deviations is left out. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 2, 40})
  void every_trapezoidal_rule_gives_the_normal_moments(double steepness) {
    NormalTrapezoid rule = NormalTrapezoid.forLogistic(10, steepness);
    double doubleFactorial = 1;
    for (int m = 1; m <= 4; m++) {
      doubleFactorial *= 2 * m - 1;
      int power = 2 * m;
      double moment =
          IntStream.range(0, rule.points())
              .mapToDouble(q -> rule.weight(q) * Math.pow(rule.node(q), power))
              .sum();
      assertThat(moment / doubleFactorial).as("moment " + power).isCloseTo(1, within(1e-4));
    }
  }

  /** By the library's exponential, node by node; steep ones are cut. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.01, 0.7, -3, 12, 33, 34, -80, 1e6})
  void exponentials_at_every_node_are_those_of_the_library(double rate) {
    double most = 200;
    for (int trials : new int[] {0, 1, 3, 10, 40, 600}) {
      NormalTrapezoid rule = NormalTrapezoid.forLogistic(trials, 1);
      double[] at = rule.exponentials(rate, most);
      assertThat(at).hasSize(rule.points());
      for (int q = 0; q < at.length; q++) {
        double power = Math.max(-most, Math.min(most, rate * rule.node(q)));
        assertThat(at[q] / Math.exp(power)).isCloseTo(1, within(1e-13));
      }
    }
  }

  /**
   * A peak that is normal itself: for a standard deviation s of it the mean of exp(-x²/2s²) is s /
   * √(1 + s²). Trials that all lie at an even chance make the narrowest one, 2 / (r √n).
   */
  @ParameterizedTest
  @ValueSource(ints = {1, 4, 16, 64, 256})
  void a_peak_as_narrow_as_so_many_trials_can_make_it_is_found(int trials) {
    for (double steepness : new double[] {0.3, 1, 3}) {
      NormalTrapezoid rule = NormalTrapezoid.forLogistic(trials, steepness);
      double s = 2 / (steepness * Math.sqrt(trials));
      for (double away : new double[] {0, 0.05, 0.11, 0.24}) {
        double mean = 0;
        for (int q = 0; q < rule.points(); q++) {
          double z = (rule.node(q) - away) / s;
          mean += rule.weight(q) * Math.exp(-z * z / 2);
        }
        double exact = s / Math.sqrt(1 + s * s) * Math.exp(-away * away / (2 * (1 + s * s)));
        assertThat(mean / exact).isCloseTo(1, within(1e-5));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {-745, -40, -1, 0, 1e-9, 3, 40, 745})
  void the_logistic_keeps_its_digits_far_out(double z) {
    assertThat(Logistic.cdf(z) + Logistic.cdf(-z)).isCloseTo(1, within(1e-15));
    assertThat(Logistic.logCdf(z) - Logistic.logCdf(-z)).isCloseTo(z, within(1e-9));
    if (Math.abs(z) < 30) {
      assertThat(Logistic.quantile(Logistic.cdf(z))).isCloseTo(z, within(1e-6));
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void the_selected_quantile_is_that_of_a_full_sort(long seed) {
    Random random = new Random(seed);
    int n = 1 + random.nextInt(300);
    double[] values = random.doubles(n).map(v -> Math.floor(20 * v)).toArray(); // with ties
    double[] weights = random.doubles(n).toArray();
    double sum = Arrays.stream(weights).sum();
    double[] shares = Arrays.stream(weights).map(w -> w / sum).toArray();
    for (double p : new double[] {0.01, 0.1, 0.5, 0.9, 0.99}) {
      assertThat(WeightedDraws.quantile(values, shares, p)).isEqualTo(bySorting(values, shares, p));
    }
  }

  private static double bySorting(double[] values, double[] weights, double p) {
    int[] order =
        IntStream.range(0, values.length)
            .boxed()
            .sorted(Comparator.comparingDouble(i -> values[i]))
            .mapToInt(i -> i)
            .toArray();
    double reached = 0;
    for (int i : order) {
      reached += weights[i];
      if (reached >= p) {
        return values[i];
      }
    }
    return values[order[order.length - 1]];
  }

  @Test
  void systematic_resampling_takes_each_draw_as_often_as_its_weight_says() {
    double[] weights = {0.5, 0.1, 0, 0.4};
    int[] chosen = new WeightedDraws(new double[4][1], weights).resample(1000);
    for (int i = 0; i < weights.length; i++) {
      int draw = i;
      long times = Arrays.stream(chosen).filter(c -> c == draw).count();
      assertThat((double) times).isCloseTo(1000 * weights[i], within(1.0));
    }
  }

  @Test
  void the_covariance_at_a_top_is_the_inverse_curvature_and_symmetric_to_the_last_digit() {
    Random random = new Random(11);
    for (int trial = 0; trial < 200; trial++) {
      double[][] root = new double[5][5];
      for (double[] row : root) {
        Arrays.setAll(row, j -> random.nextGaussian());
      }
      RealMatrix r = new Array2DRowRealMatrix(root);
      RealMatrix curvature = r.multiply(r.transpose());
      double[][] hessian = new double[5][5];
      for (int i = 0; i < 5; i++) {
        for (int j = 0; j < 5; j++) {
          hessian[i][j] = -curvature.getEntry(Math.min(i, j), Math.max(i, j));
        }
      }
      RealMatrix covariance =
          new Array2DRowRealMatrix(
              new NewtonMaximizer.Maximum(new double[5], 0, new double[5], hessian).covariance());
      assertThat(covariance).isEqualTo(covariance.transpose());
      double off =
          covariance
              .multiply(curvature)
              .subtract(MatrixUtils.createRealIdentityMatrix(5))
              .getFrobeniusNorm();
      assertThat(off).isLessThan(1e-9 * covariance.getNorm() * curvature.getNorm());
    }
  }

  /**
   * Rosenbrock's valley (1960, Computer Journal 3:175), turned upside down: maximum 0 at (1, 1).
   */
  @Test
  void newton_climbs_a_bent_ridge() {
    TwiceDifferentiableFunction ridge =
        new TwiceDifferentiableFunction() {
          @Override
          public int dimension() {
            return 2;
          }

          @Override
          public double value(double[] x) {
            return -100 * Math.pow(x[1] - x[0] * x[0], 2) - Math.pow(1 - x[0], 2);
          }

          @Override
          public Local local(double[] x) {
            double bend = x[1] - x[0] * x[0];
            return new Local(
                value(x),
                new double[] {400 * x[0] * bend + 2 * (1 - x[0]), -200 * bend},
                new double[][] {
                  {400 * (x[1] - 3 * x[0] * x[0]) - 2, 400 * x[0]}, {400 * x[0], -200}
                });
          }
        };
    NewtonMaximizer.Outcome outcome =
        NewtonMaximizer.withDefaults().maximize(ridge, new double[] {-1.2, 1});
    assertThat(outcome).isInstanceOf(NewtonMaximizer.Maximum.class);
    assertThat(((NewtonMaximizer.Maximum) outcome).point())
        .containsExactly(new double[] {1, 1}, within(1e-6));
  }

  @Test
  void newton_says_so_when_there_is_no_top() {
    TwiceDifferentiableFunction slope =
        new TwiceDifferentiableFunction() {
          @Override
          public int dimension() {
            return 1;
          }

          @Override
          public double value(double[] x) {
            return x[0];
          }

          @Override
          public Local local(double[] x) {
            return new Local(x[0], new double[] {1}, new double[][] {{0}});
          }
        };
    assertThat(NewtonMaximizer.withDefaults().maximize(slope, new double[] {0}))
        .isInstanceOf(NewtonMaximizer.NoMaximum.class);
  }
}
