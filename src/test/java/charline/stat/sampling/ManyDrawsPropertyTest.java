package charline.stat.sampling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.stat.distribution.CountDistribution;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Short ways through many draws and trials, against the long ones. Seeded. */
class ManyDrawsPropertyTest {

  private static double bySorting(double[] values, double[] weights, double probability) {
    int[] order =
        IntStream.range(0, values.length)
            .boxed()
            .sorted(Comparator.comparingDouble(i -> values[i]))
            .mapToInt(i -> i)
            .toArray();
    double reached = 0;
    for (int i : order) {
      reached += weights[i];
      if (reached >= probability) {
        return values[i];
      }
    }
    return values[order[order.length - 1]];
  }

  /** From even to so heavy-tailed that nearly all values share a bin, and with many ties. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 1, 4, 12})
  void a_weighted_quantile_is_that_of_a_full_sort(double tail) {
    Random random = new Random(1);
    double[] values = new double[5000];
    double[] weights = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      double draw = random.nextGaussian();
      values[i] =
          tail == 0 ? random.nextInt(7) : Math.signum(draw) * Math.pow(Math.abs(draw), tail);
      weights[i] = random.nextDouble();
    }
    double total = Arrays.stream(weights).sum();
    Arrays.setAll(weights, i -> weights[i] / total);
    for (double p : new double[] {1e-6, 0.01, 0.05, 0.3, 0.5, 0.9, 0.99, 1 - 1e-9}) {
      assertThat(WeightedDraws.quantile(values, weights, p))
          .as("quantile " + p)
          .isEqualTo(bySorting(values, weights, p));
    }
  }

  @Test
  void a_quantile_between_two_values_is_found_there_and_nowhere_else() {
    Random random = new Random(4);
    double[] values = random.doubles(2000).toArray();
    double[] weights = new double[values.length];
    Arrays.fill(weights, 1.0 / values.length);
    double p = 0.3001; // between two draws, whatever the order in which weights are added
    double found = bySorting(values, weights, p);
    double tiny = 1e-12;
    for (double[] ends : new double[][] {{found, found}, {0.1, found}, {found, 0.9}, {0, 1}}) {
      assertThat(WeightedSelection.quantileBetween(ends[0], ends[1], values, weights, p))
          .as("between " + Arrays.toString(ends))
          .isEqualTo(found);
    }
    for (double[] ends :
        new double[][] {{found + tiny, 1}, {0, found - tiny}, {Double.NaN, Double.NaN}}) {
      assertThat(WeightedSelection.quantileBetween(ends[0], ends[1], values, weights, p))
          .as("between " + Arrays.toString(ends))
          .isNaN();
    }
  }

  /** Lines in even steps, then one from elsewhere, values that are all one, and infinite ones. */
  @ParameterizedTest
  @ValueSource(doubles = {0.02, 0.1, 0.5, 0.98})
  void a_drifting_quantile_is_that_of_a_full_sort_wherever_it_drifts(double p) {
    Random random = new Random(3);
    double[] level = random.doubles(4000).map(u -> Math.log(u / (1 - u))).toArray();
    double[] slope = random.doubles(4000).map(u -> 1 + u * u).toArray();
    double[] weights = random.doubles(4000).toArray();
    double total = Arrays.stream(weights).sum();
    Arrays.setAll(weights, i -> weights[i] / total);
    DriftingQuantile quantile = new DriftingQuantile(weights, p);
    double[] places = {0, 0.1, 0.2, 0.3, 0.4, 0.5, 70, -70, 0.6, 0, 0, Double.POSITIVE_INFINITY, 1};
    for (double x : places) {
      double[] values = new double[level.length];
      Arrays.setAll(values, i -> x == 0 ? 7 : level[i] - slope[i] * x);
      assertThat(quantile.next(values)).as("at " + x).isEqualTo(bySorting(values, weights, p));
    }
  }

  @Test
  void a_count_of_many_trials_keeps_its_mean_and_variance() {
    Random random = new Random(2);
    double[] chances = new double[3000];
    double mean = 0;
    double variance = 0;
    for (int i = 0; i < chances.length; i++) {
      chances[i] = i % 5 == 0 ? 1 : i % 5 == 1 ? 0 : random.nextDouble();
      mean += chances[i];
      variance += chances[i] * (1 - chances[i]);
    }
    double[] p = CountDistribution.ofTrials(chances);
    assertThat(Arrays.stream(p).sum()).isCloseTo(1, within(1e-12));
    assertThat(new CountDistribution(p).mean()).isCloseTo(mean, within(1e-9));
    double spread = 0;
    for (int k = 0; k < p.length; k++) {
      spread += p[k] * (k - mean) * (k - mean);
    }
    assertThat(spread).isCloseTo(variance, within(1e-8));
  }
}
