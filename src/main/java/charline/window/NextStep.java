package charline.window;

import charline.model.check.FitFinding;
import java.util.List;

/** What to do after a verdict. */
public sealed interface NextStep {
  /** Look at a patch that the model doubts, before the window is used. */
  record CheckPatch(FitFinding finding) implements NextStep {}

  /**
   * Burn control patches at the start setting on a hidden spot of the piece.
   *
   * @param controls how many are wanting, 1 or more
   */
  record ConfirmOnPiece(int controls) implements NextStep {}

  /**
   * Look again at control patches that charred, and burn cooler ones on the piece.
   *
   * @param patches their codes
   */
  record LookAtControls(List<String> patches) implements NextStep {
    public LookAtControls {
      patches = List.copyOf(patches);
    }
  }

  /** Give this method up for the finish on the wood. */
  record UseAnotherMethod() implements NextStep {}

  /**
   * Set the lines closer, so that they touch.
   *
   * @param spacingMillimetres from line to line
   * @param spotMillimetres diameter of the spot (1/e²)
   */
  record CloserLines(double spacingMillimetres, double spotMillimetres) implements NextStep {}

  /** Burn the patches that the planner chooses next. */
  record BurnNextPatches() implements NextStep {}

  /** Amend what is mistyped, or split what differs. */
  record AmendOrSplit() implements NextStep {}
}
