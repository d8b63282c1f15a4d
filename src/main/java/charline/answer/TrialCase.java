package charline.answer;

import charline.exposure.Emission;
import charline.model.Trials;
import charline.trial.Board;
import charline.trial.Patch;
import charline.trial.Place;
import charline.window.JobRisk;
import charline.window.Requirements;
import charline.window.RigSetup;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A question with the trials that answer it.
 *
 * @param question what was asked
 * @param trials patches of one stratum, in the order of burning
 * @param bench rig and fixed knobs of the answer
 * @param piece the board that the answer is for; empty for a board not seen yet
 * @param elsewhere patches of the same coat and wood that are not counted, as they lie on other
 *     places of the board, by place
 */
public record TrialCase(
    TrialQuestion question,
    Trials trials,
    RigSetup bench,
    Optional<Board> piece,
    Map<Place, Integer> elsewhere) {
  public TrialCase {
    elsewhere = Map.copyOf(elsewhere);
  }

  /** The same with other trials, as those of models that are not the newest. */
  public TrialCase with(Trials other) {
    return new TrialCase(question, other, bench, piece, elsewhere);
  }

  /** How many of the trials were burned on the piece. */
  public long patchesOnPiece() {
    return trials.patches().stream().filter(this::onPiece).count();
  }

  /** The trials of all boards but the piece; empty where there are none. */
  public Optional<Trials> otherBoards() {
    List<Patch> others = trials.patches().stream().filter(p -> !onPiece(p)).toList();
    return others.isEmpty() ? Optional.empty() : Optional.of(trials.with(others));
  }

  private boolean onPiece(Patch patch) {
    return piece.filter(board -> board.id().equals(patch.board().id())).isPresent();
  }

  /** What a window has to keep, with the limit of a job carried over to a patch-sized area. */
  public Requirements asked() {
    return question.asked(
        trials.medianPatchSquareCentimetres().orElse(JobRisk.USUAL_PATCH_SQUARE_CENTIMETRES));
  }

  /** Whether the light is pulsed. */
  public boolean pulsed() {
    return bench.rig().emission() == Emission.PULSED;
  }
}
