package charline.sample;

/**
 * What an invented stratum is really like. One event, char or clearing, is met by pass n when
 * {@code ln D + phi ln(F/F0) + psi ln n >= ln evenDose + board + sigma e}, e standard logistic.
 *
 * @param evenDose dose of one pass with an even chance at F0, J/cm2
 * @param phi weight of intensity
 * @param psi weight of passes
 * @param sigma width of the transition, in log dose
 * @param omega spread of boards, in log dose
 */
record Truth(double evenDose, double phi, double psi, double sigma, double omega) {
  private static final int PASSES = 2;

  /**
   * The char side of a window at two passes: 5 % of patches char at {@code middle e^(gap/2)}.
   *
   * @param middle middle of the window in dose per pass, J/cm2
   * @param gap log ratio of the dose that chars 5 % to the dose that clears 90 %; negative for none
   */
  static Truth charring(
      double middle, double gap, double phi, double psi, double sigma, double omega) {
    double log =
        StrictMath.log(middle)
            + gap / 2
            + psi * StrictMath.log(PASSES)
            + sigma * StrictMath.log(19);
    return new Truth(StrictMath.exp(log), phi, psi, sigma, omega);
  }

  /** The clearing side: 90 % of patches are clear at {@code middle e^(-gap/2)}. */
  static Truth clearing(
      double middle, double gap, double phi, double psi, double sigma, double omega) {
    double log =
        StrictMath.log(middle) - gap / 2 + psi * StrictMath.log(PASSES) - sigma * StrictMath.log(9);
    return new Truth(StrictMath.exp(log), phi, psi, sigma, omega);
  }

  /**
   * The first pass by which the event is there, a large number for never.
   *
   * @param board shift of this board, in units of omega
   * @param noise standard logistic draw
   * @param dose of one pass, J/cm2
   * @param relative intensity over F0
   */
  int firstPass(double board, double noise, double dose, double relative) {
    double log =
        (StrictMath.log(evenDose)
                + omega * board
                + sigma * noise
                - StrictMath.log(dose)
                - phi * StrictMath.log(relative))
            / psi;
    return (int) StrictMath.ceil(StrictMath.exp(Math.min(Math.max(log, -1), 5)));
  }
}
