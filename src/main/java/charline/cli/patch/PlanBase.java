package charline.cli.patch;

import charline.cli.command.CommandContext;
import charline.cli.command.SureOption;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.PlannedPatch;
import charline.record.Plans;
import charline.trial.Board;
import charline.trial.Finish;
import java.util.Optional;

/**
 * A planned patch as something to copy from, the way a recorded one is.
 *
 * @param sure whether a board of another wood and a finish of another family are meant
 */
record PlanBase(PlannedPatch plan, Logbook log, CommandContext desk, SureOption sure) {
  /**
   * The plan as an entry; what was seen is only a place holder.
   *
   * @param boardName board as given, or null for the plan's
   * @param finishName finish as given, or null for the one last burned of the plan's family
   */
  PatchEntry entry(String boardName, String finishName) {
    return Plans.asPattern(plan, board(boardName), finish(finishName));
  }

  private Board board(String name) {
    if (name == null && plan.board().isPresent()) {
      return plan.board().get();
    }
    return fittingBoard(
        desk.need(
            name,
            "The board is missing: %s is planned for %s; give --board."
                .formatted(plan.code(), plan.place()),
            "Board",
            Optional.empty(),
            this::fittingBoard));
  }

  private Board fittingBoard(String name) {
    Board board = log.board(name);
    sure.require(Plans.doubts(plan, board));
    return board;
  }

  private Finish finish(String name) {
    Plans plans = new Plans(log);
    Optional<Finish> usual = name == null ? plans.finish(plan) : Optional.empty();
    return usual.orElseGet(
        () ->
            fittingFinish(
                desk.need(
                    name,
                    "The finish is missing: give --finish, as the log has %d of %s."
                        .formatted(plans.finishes(plan).size(), plan.family()),
                    "Finish",
                    Optional.empty(),
                    this::fittingFinish)));
  }

  private Finish fittingFinish(String name) {
    Finish finish = log.finish(name);
    sure.require(Plans.doubts(plan, finish));
    return finish;
  }
}
