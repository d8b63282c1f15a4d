package charline.stat.sampling;

import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.special.Gamma;

/**
 * Importance sampling from a multivariate Student t, with quasi-random draws and Pareto-smoothed
 * weights (Vehtari et al. 2024).
 *
 * @param draws number of draws; a power of two keeps the Sobol points balanced
 * @param halfDegrees half the degrees of freedom of the proposal: small is heavy-tailed
 * @param inflation factor on the proposal's standard deviations
 * @param seed fixes every digit
 */
public record ImportanceSampler(int draws, int halfDegrees, double inflation, long seed) {
  /** A fit and its refits have few; each may take a megabyte. */
  private static final int MOST_BASES = 16;

  /** Unit-scale draws are the same for every fit with the same settings: those used last. */
  private static final Map<Base, double[][]> BASES =
      Collections.synchronizedMap(
          new LinkedHashMap<>(MOST_BASES, 0.75f, true) {
            @Override
            protected boolean removeEldestEntry(Map.Entry<Base, double[][]> eldest) {
              return size() > MOST_BASES;
            }
          });

  private record Base(int draws, int variables, int halfDegrees, long seed) {}

  /**
   * A weighted sample of a target.
   *
   * @param draws draws with normalised weights
   * @param kHat Pareto shape of the raw weights
   * @param lnIntegral logarithm of the integral of the target's density, whose constant counts here
   */
  public record Sample(WeightedDraws draws, double kHat, double lnIntegral) {}

  /**
   * Samples a target.
   *
   * @param logDensity logarithm of the target's density up to a constant; n variables
   * @param centre centre of the proposal, n
   * @param covariance its covariance before inflation, n x n, positive definite
   */
  public Sample sample(
      ToDoubleFunction<double[]> logDensity, double[] centre, double[][] covariance) {
    int n = centre.length;
    RealMatrix lower =
        new CholeskyDecomposition(new Array2DRowRealMatrix(covariance), 1e-10, 1e-14).getL();
    double[][] root = lower.scalarMultiply(inflation).getData();
    double[][] base = base(n);
    double[][] points = new double[draws][n];
    double[] logWeights = new double[draws];
    double degrees = 2.0 * halfDegrees;
    for (int i = 0; i < draws; i++) {
      double[] z = base[i];
      double square = 0;
      for (int r = 0; r < n; r++) {
        double moved = centre[r];
        for (int c = 0; c <= r; c++) {
          moved += root[r][c] * z[c];
        }
        points[i][r] = moved;
        square += z[r] * z[r];
      }
      double logProposal = -0.5 * (degrees + n) * Math.log1p(square / degrees);
      double density = logDensity.applyAsDouble(points[i]);
      logWeights[i] = Double.isNaN(density) ? Double.NEGATIVE_INFINITY : density - logProposal;
    }
    ParetoSmoothing smoothing = ParetoSmoothing.of(logWeights);
    double lnIntegral = lnMeanExp(logWeights) - lnPeak(n, degrees);
    for (int k = 0; k < n; k++) {
      lnIntegral += Math.log(root[k][k]);
    }
    return new Sample(new WeightedDraws(points, smoothing.weights()), smoothing.kHat(), lnIntegral);
  }

  /** Outside of the map's lock, as other fits need other draws meanwhile. */
  private double[][] base(int variables) {
    Base wanted = new Base(draws, variables, halfDegrees, seed);
    double[][] kept = BASES.get(wanted);
    if (kept == null) {
      kept = QuasiRandom.student(draws, variables, halfDegrees, seed);
      BASES.put(wanted, kept);
    }
    return kept;
  }

  private static double lnMeanExp(double[] logs) {
    double top = Arrays.stream(logs).max().orElseThrow();
    return top + Math.log(Arrays.stream(logs).map(l -> Math.exp(l - top)).average().orElseThrow());
  }

  /** ln of the density of Student's t in n variables at its centre, with unit scale. */
  private static double lnPeak(int n, double degrees) {
    return Gamma.logGamma((degrees + n) / 2)
        - Gamma.logGamma(degrees / 2)
        - n / 2.0 * Math.log(degrees * Math.PI);
  }

  /**
   * Samples again with the proposal moved to the weighted mean and covariance of a first sample,
   * for targets that lean away from their mode.
   */
  public Sample resample(ToDoubleFunction<double[]> logDensity, Sample first) {
    int n = first.draws().points()[0].length;
    double[] mean = new double[n];
    for (int k = 0; k < n; k++) {
      mean[k] = WeightedDraws.mean(first.draws().column(k), first.draws().weights());
    }
    return sample(logDensity, mean, covariance(first.draws(), mean));
  }

  /** Weighted covariance about a mean, with a trace of a ridge against collapse. */
  static double[][] covariance(WeightedDraws draws, double[] mean) {
    int n = mean.length;
    double[][] sum = new double[n][n];
    for (int i = 0; i < draws.size(); i++) {
      double[] x = draws.points()[i];
      for (int r = 0; r < n; r++) {
        for (int c = r; c < n; c++) {
          sum[r][c] += draws.weights()[i] * (x[r] - mean[r]) * (x[c] - mean[c]);
        }
      }
    }
    for (int r = 0; r < n; r++) {
      sum[r][r] += 1e-6;
      for (int c = 0; c < r; c++) {
        sum[r][c] = sum[c][r]; // equal to the last bit, which rounding alone would not make it
      }
    }
    return sum;
  }
}
