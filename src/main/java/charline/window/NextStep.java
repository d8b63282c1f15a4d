package charline.window;

import charline.model.check.FitFinding;
import java.util.List;

/** What to do after a verdict. */
public sealed interface NextStep {
  /** Look at a patch that the model doubts, before the window is used. */
  record CheckPatch(FitFinding finding) implements NextStep {}

  /** Burn three patches at the start setting on a hidden spot of the piece. */
  record ConfirmOnPiece() implements NextStep {}

  /** Give this method up for the finish on the wood. */
  record UseAnotherMethod() implements NextStep {}

  /** Burn from the lowest rung up, with this rig. */
  record ClimbFromLowest() implements NextStep {}

  /** Burn cooler patches first: every dose near the best setting has charred before. */
  record GoCooler() implements NextStep {}

  /**
   * Burn these settings in this order.
   *
   * @param powerPercent power on the dial
   * @param speed what kind of speed
   * @param speedsMillimetresPerSecond speeds, the coolest patch first
   * @param passes judge after every pass up to this one
   */
  record BurnPatches(
      double powerPercent,
      SpeedKnob.Kind speed,
      List<Double> speedsMillimetresPerSecond,
      int passes)
      implements NextStep {
    public BurnPatches {
      speedsMillimetresPerSecond = List.copyOf(speedsMillimetresPerSecond);
    }
  }

  /** Amend what is mistyped, or split what differs. */
  record AmendOrSplit() implements NextStep {}
}
