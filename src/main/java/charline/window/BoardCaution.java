package charline.window;

import charline.model.Estimate;
import charline.model.ModelFit;

/**
 * How far a window keeps back from its two limits because boards are seen to differ: nothing up to
 * a spread that is usual, then in proportion to what lies above it, so that a window shrinks as the
 * spread grows and does not vanish at a threshold. The fewer the boards, the less they show of how
 * much boards differ, so the farther it keeps back.
 *
 * @param lnHot below the highest dose that keeps the char promise, in ln dose, 0 or more
 * @param lnCold above the lowest dose that keeps the clearing promise, in ln dose, 0 or more
 */
record BoardCaution(double lnHot, double lnCold) {
  static final BoardCaution NONE = new BoardCaution(0, 0);

  /** Board spread in ln dose, median of its posterior, up to which boards count as alike. */
  private static final double USUAL_SPREAD = 0.15;

  /**
   * On three boards a window keeps back by twice what the spread is above the usual, on five by
   * once that. Both numbers were chosen by simulated shops (package description).
   */
  private static final double ON_TWO_BOARDS = 4;

  /**
   * The caution that fits two models.
   *
   * @param boards how many carry a patch
   */
  static BoardCaution of(ModelFit charFit, ModelFit clearingFit, int boards) {
    return new BoardCaution(
        stepBack(charFit.omega(), boards), stepBack(clearingFit.omega(), boards));
  }

  /** How far to keep back from one limit, in ln dose. */
  static double stepBack(Estimate spread, int boards) {
    return ON_TWO_BOARDS / Math.max(1, boards - 1) * Math.max(0, spread.median() - USUAL_SPREAD);
  }

  /** The same, and so much more on both sides. */
  BoardCaution and(double ln) {
    return new BoardCaution(lnHot + ln, lnCold + ln);
  }

  boolean any() {
    return lnHot > 0 || lnCold > 0;
  }
}
