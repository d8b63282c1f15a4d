package charline.pooling;

import charline.stat.distribution.Logistic;
import charline.stat.quadrature.GaussHermite;

/**
 * What is true of one event on one coating and wood, invented: the terms of the passes-to-event
 * model at the fluence of 60 % power.
 *
 * @param tau ln of the one-pass dose (J/cm2) with an even chance on an average board
 * @param phi weight of ln fluence
 * @param psi weight of ln passes
 * @param sigma spread of patches, in ln dose
 * @param omega standard deviation of boards, in ln dose
 */
public record Truth(double tau, double phi, double psi, double sigma, double omega) {
  private static final GaussHermite BOARDS = new GaussHermite(41);
  private static final double LN_NEVER = 7;

  /** The same with another even-chance dose. */
  public Truth moved(double lnDose) {
    return new Truth(tau + lnDose, phi, psi, sigma, omega);
  }

  /** ln dose at which the chance on an average board is a given one, after so many passes. */
  double lnDoseAt(double chance, int passes) {
    return tau + sigma * Logistic.quantile(chance) - psi * Math.log(passes);
  }

  /** The event's true chance at a setting on a board not seen yet. */
  public double newBoardChance(double doseJoulesPerCm2, double fluence, int passes) {
    double margin =
        Math.log(doseJoulesPerCm2)
            + phi * Math.log(fluence / Yard.fluence(60))
            + psi * Math.log(passes)
            - tau;
    double sum = 0;
    for (int q = 0; q < BOARDS.points(); q++) {
      sum += BOARDS.weight(q) * Logistic.cdf((margin - omega * BOARDS.node(q)) / sigma);
    }
    return sum;
  }

  /**
   * The first pass by which a patch meets the event; a very large number for never.
   *
   * @param shift of its coat and board, in ln dose
   * @param e its draw of the standard logistic
   */
  double firstPass(double percent, double hand, double shift, double e) {
    double room =
        tau
            + shift
            + sigma * e
            - Math.log(Yard.dose(percent, hand))
            - phi * Math.log(Yard.fluence(percent) / Yard.fluence(60));
    return room <= 0 ? 1 : Math.ceil(Math.exp(Math.min(LN_NEVER, room / psi)));
  }
}
