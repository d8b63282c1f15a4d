package charline.stat.sampling;

import java.util.Arrays;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.random.Well19937c;

/**
 * Random-walk Metropolis sampling with several chains (Roberts, Gelman and Gilks 1997: steps of
 * 2.38² Σ / n), the fallback where importance sampling fails. Convergence is judged by split R-hat
 * (Gelman et al. 2013, Bayesian Data Analysis, section 11.4), which says something only of chains
 * that began far apart: each starts at its own place, spread twice as wide as the target is thought
 * to be.
 *
 * @param chains independent chains, 2 or more
 * @param kept draws kept of each chain, even
 * @param thinning steps per kept draw
 * @param seed fixes every digit
 */
public record MarkovChain(int chains, int kept, int thinning, long seed) {
  private static final double SPREAD_OF_STARTS = 2;

  /** Starts tried for one chain before it takes the common one. */
  private static final int STARTS_TRIED = 100;

  /**
   * A sample by Markov chains.
   *
   * @param draws all kept draws, equal weights
   * @param splitRHat largest split R-hat over the variables; close to 1 when the chains agree
   */
  public record Sample(WeightedDraws draws, double splitRHat) {}

  /**
   * Samples a target; the first half of each chain is thrown away.
   *
   * @param logDensity logarithm of the density up to a constant
   * @param start what the starts of the chains are spread about, n; a chain starts there itself if
   *     no other place that was tried has a finite log density
   * @param covariance rough covariance of the target, n x n, positive definite
   */
  public Sample sample(
      ToDoubleFunction<double[]> logDensity, double[] start, double[][] covariance) {
    int n = start.length;
    double[][] root =
        new CholeskyDecomposition(new Array2DRowRealMatrix(covariance), 1e-8, 1e-14)
            .getL()
            .getData();
    double scale = 2.38 / Math.sqrt(n);
    double[][][] chain = new double[chains][kept][];
    for (int c = 0; c < chains; c++) {
      Well19937c random = new Well19937c(seed + 7919L * c);
      double[] here = spread(logDensity, start, root, random);
      double density = logDensity.applyAsDouble(here);
      for (int step = -kept; step < kept; step++) {
        for (int t = 0; t < thinning; t++) {
          double[] there = jump(here, root, scale, random);
          double candidate = logDensity.applyAsDouble(there);
          if (Math.log(random.nextDouble()) < candidate - density) {
            here = there;
            density = candidate;
          }
        }
        if (step >= 0) {
          chain[c][step] = here;
        }
      }
    }
    double[][] points = Arrays.stream(chain).flatMap(Arrays::stream).toArray(double[][]::new);
    double[] weights = new double[points.length];
    Arrays.fill(weights, 1.0 / points.length);
    return new Sample(new WeightedDraws(points, weights), largestSplitRHat(chain, n));
  }

  private static double[] spread(
      ToDoubleFunction<double[]> logDensity, double[] start, double[][] root, Well19937c random) {
    for (int tried = 0; tried < STARTS_TRIED; tried++) {
      double[] place = jump(start, root, SPREAD_OF_STARTS, random);
      if (Double.isFinite(logDensity.applyAsDouble(place))) {
        return place;
      }
    }
    return start.clone();
  }

  private static double[] jump(double[] from, double[][] root, double scale, Well19937c random) {
    double[] z = new double[from.length];
    double[] to = from.clone();
    for (int r = 0; r < from.length; r++) {
      z[r] = random.nextGaussian();
      for (int c = 0; c <= r; c++) {
        to[r] += scale * root[r][c] * z[c];
      }
    }
    return to;
  }

  private static double largestSplitRHat(double[][][] chain, int variables) {
    int half = chain[0].length / 2;
    double largest = 1;
    for (int k = 0; k < variables; k++) {
      int pieces = 2 * chain.length;
      double[] mean = new double[pieces];
      double within = 0;
      for (int p = 0; p < pieces; p++) {
        double[][] draws = chain[p / 2];
        int from = p % 2 * half;
        for (int i = from; i < from + half; i++) {
          mean[p] += draws[i][k] / half;
        }
        for (int i = from; i < from + half; i++) {
          within += Math.pow(draws[i][k] - mean[p], 2) / (half - 1) / pieces;
        }
      }
      double grand = Arrays.stream(mean).average().orElseThrow();
      double between =
          Arrays.stream(mean).map(m -> (m - grand) * (m - grand)).sum() * half / (pieces - 1);
      double pooled = (half - 1.0) / half * within + between / half;
      largest = Math.max(largest, Math.sqrt(pooled / within));
    }
    return largest;
  }
}
