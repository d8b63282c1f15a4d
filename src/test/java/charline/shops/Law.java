package charline.shops;

import charline.stat.quadrature.GaussHermite;

/**
 * What is true of one event in one shop: it is met by pass n when {@code ln D + phi ln(F/F0) + psi
 * ln n >= tau + board + sigma e}.
 *
 * @param tau ln of the one-pass dose (J/cm2) with an even chance at F0 on an average board
 * @param phi weight of ln intensity
 * @param psi weight of ln passes
 * @param sigma spread of patches, in ln dose
 * @param omega standard deviation of boards, in ln dose
 * @param noise distribution of e
 * @param lnReference ln F0
 */
public record Law(
    double tau,
    double phi,
    double psi,
    double sigma,
    double omega,
    Noise noise,
    double lnReference) {
  private static final GaussHermite BOARDS = new GaussHermite(41);

  /** Passes at which the truth is pinned. */
  private static final int PINNED_PASSES = 2;

  /** The ladder of a patch ends far below this. */
  private static final double LN_NEVER = 7;

  /** The same with another even-chance dose. */
  public Law moved(double lnDose) {
    return new Law(tau + lnDose, phi, psi, sigma, omega, noise, lnReference);
  }

  /** ln dose at which the chance at F0 on an average board is a given one, after so many passes. */
  public double lnDoseAt(double chance, int passes) {
    return tau + sigma * noise.quantile(chance) - psi * StrictMath.log(passes);
  }

  /** The law with a given chance at an ln dose after two passes at F0 on an average board. */
  public static Law pinned(
      double lnDose,
      double chance,
      double phi,
      double psi,
      double sigma,
      double omega,
      Noise noise,
      double lnReference) {
    double tau = lnDose + psi * StrictMath.log(PINNED_PASSES) - sigma * noise.quantile(chance);
    return new Law(tau, phi, psi, sigma, omega, noise, lnReference);
  }

  /** The event's true chance at a setting on a board not seen yet. */
  public double newBoardChance(double doseJoulesPerCm2, double intensity, int passes) {
    double sum = 0;
    for (int q = 0; q < BOARDS.points(); q++) {
      sum += BOARDS.weight(q) * chanceOn(BOARDS.node(q), doseJoulesPerCm2, intensity, passes);
    }
    return sum;
  }

  /**
   * The event's true chance at a setting on one board.
   *
   * @param board its shift in units of omega
   */
  public double chanceOn(double board, double doseJoulesPerCm2, double intensity, int passes) {
    double margin =
        Math.log(doseJoulesPerCm2)
            + phi * (Math.log(intensity) - lnReference)
            + psi * Math.log(passes)
            - tau;
    return noise.cdf((margin - omega * board) / sigma);
  }

  /**
   * The first pass by which a patch meets the event; a very large number for never.
   *
   * @param board this board's shift in units of omega
   * @param e this patch's draw of the noise
   */
  public double firstPass(double lnDose, double lnIntensity, double board, double e) {
    double room = tau + omega * board + sigma * e - lnDose - phi * (lnIntensity - lnReference);
    return room <= 0 ? 1 : StrictMath.ceil(StrictMath.exp(Math.min(LN_NEVER, room / psi)));
  }
}
