package charline.model;

/**
 * What is known of the shift of one board, draw by draw: nothing but its spread for a board not
 * seen yet, more for a piece with patches of its own.
 */
interface BoardShift {
  /** Largest exponent kept; its exponential and the inverse of that are still ordinary numbers. */
  double CAP = 700;

  /**
   * Chance of the event, E Λ((margin - u) / σ) over the shift u, or that over an area with seams.
   *
   * @param margin by how much a setting lies above the even chance on an average board, in ln dose
   * @param seamShare share of the area that is a {@link Seam}, 0 to 1
   */
  double chance(int draw, double margin, double seamShare);

  /** The margin at which the chance is a given one, inside (0, 1). */
  double margin(int draw, double chance, double seamShare);

  /** The same for some of the draws. */
  BoardShift chosen(int[] draws);

  /** Exponential of an exponent kept within the cap. */
  static double cappedExp(double exponent) {
    return Math.exp(Math.max(-CAP, Math.min(CAP, exponent)));
  }
}
