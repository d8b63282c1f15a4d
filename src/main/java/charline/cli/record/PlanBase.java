package charline.cli.record;

import charline.cli.desk.Desk;
import charline.cli.desk.Sure;
import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.PlannedPatch;
import charline.trial.Board;
import charline.trial.Finish;
import charline.trial.Mark;
import charline.trial.Outcome;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.trial.Stratum;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** A planned patch as something to copy from, the way a recorded one is. */
final class PlanBase {
  private PlanBase() {}

  /**
   * The plan as an entry; what was seen is only a place holder.
   *
   * @param boardName board as given, or null for the plan's
   * @param finishName finish as given, or null for the one last burned of the plan's family and
   *     wood
   * @param sure whether a board of another wood and a finish of another family are meant
   */
  static PatchEntry of(
      PlannedPatch plan, String boardName, String finishName, Logbook log, Desk desk, Sure sure) {
    Reading unread =
        new Reading(
            plan.id(),
            1,
            Outcome.of(Mark.CLEAN),
            Optional.empty(),
            OptionalDouble.empty(),
            plan.plannedAt(),
            Optional.empty(),
            Optional.empty());
    Patch patch =
        new Patch(
            plan.id(),
            plan.code(),
            plan.plannedAt(),
            plan.rig(),
            board(plan, boardName, log, desk, sure),
            finish(plan, finishName, log, desk, sure),
            plan.settings(),
            OptionalDouble.empty(),
            List.of(unread));
    return new PatchEntry(patch, Map.of(), Optional.empty(), Optional.empty(), Optional.empty());
  }

  private static Board board(PlannedPatch plan, String name, Logbook log, Desk desk, Sure sure) {
    if (name == null && plan.board().isPresent()) {
      return plan.board().get();
    }
    return fitting(
        plan,
        log.board(
            desk.need(
                name,
                "The board is missing: %s is planned for %s; give --board."
                    .formatted(plan.code(), plan.place()),
                "Board",
                Optional.empty(),
                answer -> fitting(plan, log.board(answer), sure))),
        sure);
  }

  private static Board fitting(PlannedPatch plan, Board board, Sure sure) {
    boolean planned = plan.board().filter(own -> own.id().equals(board.id())).isPresent();
    if (!planned && !plan.wood().equals(Stratum.ANY_WOOD) && !plan.wood().equals(board.wood())) {
      sure.doubt(
          "%s is planned for %s, and board %s is %s; give a board of %s, or add --sure."
              .formatted(plan.code(), plan.wood(), board.name(), board.wood(), plan.wood()));
    }
    return board;
  }

  private static Finish finish(PlannedPatch plan, String name, Logbook log, Desk desk, Sure sure) {
    List<Finish> burned =
        log.patches(Filter.ALL).stream()
            .map(PatchEntry::patch)
            .filter(p -> p.finish().family().equals(plan.family()))
            .map(Patch::finish)
            .toList();
    List<Finish> known =
        log.finishes().stream().filter(f -> f.family().equals(plan.family())).toList();
    if (name == null && !burned.isEmpty()) {
      return burned.get(burned.size() - 1);
    }
    if (name == null && known.size() == 1) {
      return known.get(0);
    }
    return fitting(
        plan,
        log.finish(
            desk.need(
                name,
                "The finish is missing: give --finish, as the log has %d of %s."
                    .formatted(known.size(), plan.family()),
                "Finish",
                Optional.empty(),
                answer -> fitting(plan, log.finish(answer), sure))),
        sure);
  }

  private static Finish fitting(PlannedPatch plan, Finish finish, Sure sure) {
    if (!plan.family().equals(finish.family())) {
      sure.doubt(
          "%s is planned for %s, and finish %s is %s; give a finish of %s, or add --sure."
              .formatted(
                  plan.code(), plan.family(), finish.name(), finish.family(), plan.family()));
    }
    return finish;
  }
}
