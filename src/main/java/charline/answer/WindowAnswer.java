package charline.answer;

import charline.plan.NextPatches;
import charline.trial.Caution;
import charline.window.JobRisk;
import charline.window.Recommendation;
import charline.window.Verdict;
import java.util.List;
import java.util.Optional;

/**
 * A window, or why there is none, with all that goes with it.
 *
 * @param subject the question and the trials that answer it
 * @param found the recommendation
 * @param applicability whether it applies to the rig as it is now
 * @param next the patches to burn next, the usual number of them
 * @param precautions of every finish, board and kind of light behind it
 * @param job risk over the job that was asked about, where there is a start setting
 * @param offer what could be borrowed, where nothing was
 * @param nearWoods trials on near woods that were not counted
 * @param piece what the patches of the piece changed, where the question names one
 * @param boards what was likely of the spread between boards before these trials
 */
public record WindowAnswer(
    TrialCase subject,
    Recommendation found,
    Applicability applicability,
    NextPatches next,
    Precautions precautions,
    Optional<JobRisk> job,
    Optional<BorrowOffer> offer,
    List<NearWood> nearWoods,
    Optional<PieceAnswer> piece,
    BoardPriors boards) {

  /** Cautions of every finish, board and kind of light behind it, most serious first. */
  public List<Caution> cautions() {
    return precautions.cautions();
  }

  /** True where there is a window. */
  public boolean isWindow() {
    return found.verdict() == Verdict.WINDOW;
  }
}
