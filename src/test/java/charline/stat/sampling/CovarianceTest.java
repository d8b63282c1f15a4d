package charline.stat.sampling;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class CovarianceTest {
  @Test
  void a_weighted_covariance_is_symmetric_to_the_last_bit() {
    Random random = new Random(4);
    double[][] points = new double[300][5];
    double[] weights = new double[points.length];
    Arrays.fill(weights, 1.0 / points.length);
    for (double[] point : points) {
      Arrays.setAll(point, k -> random.nextGaussian() * Math.pow(10, -k));
    }

    double[][] covariance =
        ImportanceSampler.covariance(new WeightedDraws(points, weights), new double[5]);

    for (int r = 0; r < 5; r++) {
      for (int c = 0; c < r; c++) {
        assertThat(covariance[r][c]).isEqualTo(covariance[c][r]);
      }
    }
  }
}
