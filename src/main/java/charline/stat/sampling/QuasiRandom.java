package charline.stat.sampling;

import charline.stat.distribution.StandardNormal;
import org.apache.commons.math3.random.SobolSequenceGenerator;
import org.apache.commons.math3.random.Well19937c;

/**
 * Quasi-random draws of a multivariate Student t with unit scale: Sobol points, shifted by a seeded
 * random vector modulo 1 (Cranley and Patterson 1976), through the inverse distribution functions.
 * The same seed gives the same digits.
 */
final class QuasiRandom {
  private static final double EDGE = 1e-12;

  private QuasiRandom() {}

  /**
   * Student t vectors z √(ν / χ²) with ν = 2 {@code halfDegrees}.
   *
   * @param count number of draws
   * @param variables length of each draw, n
   * @param halfDegrees half the degrees of freedom; χ² is then a sum of this many exponentials
   * @return count x n
   */
  static double[][] student(int count, int variables, int halfDegrees, long seed) {
    int dimensions = variables + halfDegrees;
    double[] shift = new double[dimensions];
    Well19937c random = new Well19937c(seed);
    for (int k = 0; k < dimensions; k++) {
      shift[k] = random.nextDouble();
    }
    SobolSequenceGenerator sobol = new SobolSequenceGenerator(dimensions);
    double[][] draws = new double[count][];
    for (int i = 0; i < count; i++) {
      double[] u = sobol.nextVector();
      for (int k = 0; k < dimensions; k++) {
        double shifted = u[k] + shift[k];
        u[k] = Math.min(Math.max(shifted - Math.floor(shifted), EDGE), 1 - EDGE);
      }
      double chiSquared = 0;
      for (int k = variables; k < dimensions; k++) {
        chiSquared -= 2 * Math.log(u[k]);
      }
      double stretch = Math.sqrt(2 * halfDegrees / chiSquared);
      double[] draw = new double[variables];
      for (int k = 0; k < variables; k++) {
        draw[k] = stretch * StandardNormal.quantile(u[k]);
      }
      draws[i] = draw;
    }
    return draws;
  }
}
