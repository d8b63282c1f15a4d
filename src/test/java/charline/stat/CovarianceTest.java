package charline.stat;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.linear.RealMatrix;
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

    RealMatrix covariance =
        ImportanceSampler.covariance(new WeightedDraws(points, weights), new double[5]);

    assertThat(covariance).isEqualTo(covariance.transpose());
  }
}
