package charline.plan;

import charline.stat.GaussHermite;
import charline.stat.Logistic;
import java.util.Random;

/**
 * What is true of one event in an invented shop: it is met by pass n when {@code ln D + phi
 * ln(F/F0) + psi ln n >= tau + omega u + sigma e}, e standard logistic, u normal from board to
 * board.
 *
 * @param tau ln of the one-pass dose (J/cm2) with an even chance at F0 on an average board
 * @param phi weight of ln intensity
 * @param psi weight of ln passes
 * @param sigma spread of patches, in ln dose
 * @param omega spread of boards, in ln dose
 * @param lnReference ln F0
 */
record TrueLaw(double tau, double phi, double psi, double sigma, double omega, double lnReference) {
  private static final GaussHermite BOARDS = new GaussHermite(41);

  /** The law with a given chance at an ln dose after two passes at F0 on an average board. */
  static TrueLaw pinned(
      double lnDose,
      double chance,
      double phi,
      double psi,
      double sigma,
      double omega,
      double lnReference) {
    double tau = lnDose + psi * Math.log(2) - sigma * Logistic.quantile(chance);
    return new TrueLaw(tau, phi, psi, sigma, omega, lnReference);
  }

  /** The event's true chance at a setting on a board not seen yet. */
  double newBoardChance(double doseJoulesPerCm2, double intensity, int passes) {
    double margin =
        Math.log(doseJoulesPerCm2)
            + phi * (Math.log(intensity) - lnReference)
            + psi * Math.log(passes)
            - tau;
    double sum = 0;
    for (int q = 0; q < BOARDS.points(); q++) {
      sum += BOARDS.weight(q) * Logistic.cdf((margin - omega * BOARDS.node(q)) / sigma);
    }
    return sum;
  }

  /** The first pass by which a patch meets the event, a large number for never. */
  int firstPass(double lnDose, double lnIntensity, double board, Random random) {
    double noise = Logistic.quantile(Math.max(1e-12, random.nextDouble()));
    double room = tau + omega * board + sigma * noise - lnDose - phi * (lnIntensity - lnReference);
    return (int) Math.ceil(Math.exp(Math.max(0, Math.min(7, room / psi))));
  }
}
