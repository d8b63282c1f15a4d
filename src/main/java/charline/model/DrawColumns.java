package charline.model;

import charline.stat.sampling.WeightedDraws;
import java.util.Arrays;

/**
 * Weighted draws of one event's parameters, a column for each parameter. The arrays are never
 * changed, so that other draws may share them.
 *
 * @param lnReference ln of the intensity that τ is for
 * @param tau ln of the one-pass dose with an even chance on an average board, as the work is done
 * @param phi how much of a rise of ln intensity counts as ln dose
 * @param psi the same of ln passes
 * @param sigma scale of a patch about its board, in ln dose
 * @param omega spread between boards, in ln dose
 * @param wayWeights by how much each trait of the way of working shifts τ, a column for each
 * @param weights of the draws, adding up to 1
 */
record DrawColumns(
    double lnReference,
    double[] tau,
    double[] phi,
    double[] psi,
    double[] sigma,
    double[] omega,
    double[][] wayWeights,
    double[] weights) {

  /**
   * Of draws in the coordinates of {@link PassesToEvent}.
   *
   * @param prior whose least φ and ψ the coordinates begin at
   * @param traits how many shifts of the way there are
   */
  static DrawColumns of(WeightedDraws draws, double lnReference, Prior prior, int traits) {
    double[][] draw =
        Arrays.stream(draws.points())
            .map(x -> PassesToEvent.parameters(x, prior))
            .toArray(double[][]::new);
    double[][] wayWeights = new double[traits][];
    Arrays.setAll(wayWeights, k -> column(draw, PassesToEvent.WAY + k));
    return new DrawColumns(
        lnReference,
        column(draw, PassesToEvent.TAU),
        column(draw, PassesToEvent.PHI),
        column(draw, PassesToEvent.PSI),
        column(draw, PassesToEvent.SIGMA),
        column(draw, PassesToEvent.OMEGA),
        wayWeights,
        draws.weights().clone());
  }

  private static double[] column(double[][] draws, int parameter) {
    return Arrays.stream(draws).mapToDouble(d -> d[parameter]).toArray();
  }

  int size() {
    return weights.length;
  }

  /**
   * By how much τ of one way of working lies above that of another in a draw.
   *
   * @param way values of its shifts from those of the other; none where all are one
   */
  double wayShift(int draw, double[] way) {
    double shift = 0;
    for (int k = 0; k < way.length; k++) {
      shift += wayWeights[k][draw] * way[k];
    }
    return shift;
  }

  /** The same for another way of working. */
  DrawColumns moved(double[] way) {
    double[] moved = new double[size()];
    Arrays.setAll(moved, i -> tau[i] + wayShift(i, way));
    return new DrawColumns(lnReference, moved, phi, psi, sigma, omega, wayWeights, weights);
  }

  /** The same with other weights. */
  DrawColumns weighted(double[] anew) {
    return new DrawColumns(lnReference, tau, phi, psi, sigma, omega, wayWeights, anew);
  }

  /** Some of them, equally weighted. */
  DrawColumns chosen(int[] draws) {
    double[] equal = new double[draws.length];
    Arrays.fill(equal, 1.0 / draws.length);
    return new DrawColumns(
        lnReference,
        chosen(tau, draws),
        chosen(phi, draws),
        chosen(psi, draws),
        chosen(sigma, draws),
        chosen(omega, draws),
        Arrays.stream(wayWeights).map(w -> chosen(w, draws)).toArray(double[][]::new),
        equal);
  }

  private static double[] chosen(double[] values, int[] draws) {
    return Arrays.stream(draws).mapToDouble(d -> values[d]).toArray();
  }

  /** One of them. */
  Draw draw(int i) {
    double[] ways = Arrays.stream(wayWeights).mapToDouble(w -> w[i]).toArray();
    return new Draw(lnReference, tau[i], phi[i], psi[i], sigma[i], omega[i], ways);
  }
}
