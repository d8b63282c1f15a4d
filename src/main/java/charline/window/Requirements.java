package charline.window;

import charline.quantity.Invariant;

/**
 * What a window has to keep.
 *
 * @param charRisk highest char risk per patch-sized area on a new board, 0 to 1
 * @param confidence posterior probability with which each promise must hold, 0.5 to 1
 * @param clearChance lowest clearing chance on a new board, 0 to 1
 * @param acceptTint count a tint in the grain as cleared
 */
public record Requirements(
    double charRisk, double confidence, double clearChance, boolean acceptTint) {
  /** Far below what any number of patches shows; what is asked so low is said to hang on a tail. */
  public static final double LEAST_CHAR_RISK = 1e-6;

  /** Char risk 5 %, confidence 90 %, clearing chance 90 %, tint not accepted. */
  public static final Requirements USUAL = new Requirements(0.05, 0.90, 0.90, false);

  public Requirements {
    Invariant.within("Char risk", charRisk, LEAST_CHAR_RISK, 0.5, "");
    Invariant.within("Confidence", confidence, 0.5, 0.999, "");
    Invariant.within("Clearing chance", clearChance, 0.05, 0.999, "");
  }

  /** The same with another limit of the char risk. */
  public Requirements withCharRisk(double limit) {
    return new Requirements(limit, confidence, clearChance, acceptTint);
  }
}
