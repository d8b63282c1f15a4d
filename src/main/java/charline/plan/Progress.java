package charline.plan;

import charline.window.Reason;
import charline.window.UntriedKnob;
import java.util.List;

/** Where a stratum is when its next patches are planned. */
public sealed interface Progress {
  /** Nothing was burned yet, so nothing may be burned on the piece. */
  record NothingBurned() implements Progress {}

  /** Nothing was burned yet; a ladder begins at a dose that is safe by the priors. */
  record FirstLadder() implements Progress {}

  /** As the window says. */
  record AsFound(List<Reason> reasons) implements Progress {
    public AsFound {
      reasons = List.copyOf(reasons);
    }
  }

  /**
   * It is not known yet where one piece lies among boards.
   *
   * @param board name of the piece
   */
  record ToPlacePiece(String board) implements Progress {}

  /**
   * There is a window, and its start setting is to be confirmed.
   *
   * @param newRig on a rig that has burned none of the trials
   * @param untried knobs that stand where no trial had them
   */
  record ToConfirm(boolean newRig, List<UntriedKnob> untried) implements Progress {
    public ToConfirm {
      untried = List.copyOf(untried);
    }
  }
}
