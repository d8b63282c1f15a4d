package charline.stat.optimisation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Separation of large samples, where few rows decide. */
class RecessionDirectionPropertyTest {
  private static final double[][] NONE = {};

  /** Rows of an intercept and two covariates, turned so that along (1, 2, -1) none falls. */
  private static double[][] separated(int rows, Random random) {
    double[][] result = new double[rows][];
    for (int i = 0; i < rows; i++) {
      double[] row = {1, random.nextGaussian(), random.nextGaussian()};
      double side = row[0] + 2 * row[1] - row[2];
      double sign = side < 0 ? -1 : 1;
      result[i] = new double[] {sign * row[0], sign * row[1], sign * row[2]};
    }
    return result;
  }

  @Test
  void a_large_separated_sample_has_a_direction_along_which_no_row_falls() {
    for (int seed = 0; seed < 5; seed++) {
      double[][] rows = separated(20_000, new Random(seed));
      double[] direction = RecessionDirection.direction(rows, NONE).orElseThrow();
      for (double[] row : rows) {
        assertThat(row[0] * direction[0] + row[1] * direction[1] + row[2] * direction[2])
            .isGreaterThan(-1e-6);
      }
      assertThat(RecessionDirection.allCanRise(rows)).isTrue();
    }
  }

  @Test
  void one_row_that_falls_far_enough_ends_separation_wherever_it_lies() {
    for (int seed = 0; seed < 5; seed++) {
      Random random = new Random(seed);
      double[][] rows = separated(20_000, random);
      rows[random.nextInt(rows.length)] = new double[] {-1, -2, 1};
      assertThat(RecessionDirection.direction(rows, NONE)).isEmpty();
    }
  }

  @Test
  void a_row_that_must_stay_level_is_held_level() {
    double[][] rows = separated(5_000, new Random(9));
    double[][] level = {{1, 0, 0}};
    RecessionDirection.direction(rows, level)
        .ifPresent(direction -> assertThat(direction[0]).isBetween(-1e-6, 1e-6));
    assertThat(RecessionDirection.direction(rows, new double[][] {{1, 2, -1}})).isEmpty();
  }

  @Test
  void a_large_sample_that_overlaps_has_none() {
    Random random = new Random(3);
    double[][] rows = new double[200_000][];
    for (int i = 0; i < rows.length; i++) {
      double x = random.nextGaussian();
      double sign = random.nextDouble() < 1 / (1 + Math.exp(-x)) ? 1 : -1;
      rows[i] = new double[] {sign, sign * x};
    }
    assertThat(RecessionDirection.direction(rows, NONE)).isEmpty();
  }
}
