package charline.record;

import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.PlannedPatch;
import charline.trial.Board;
import charline.trial.Circumstances;
import charline.trial.Finish;
import charline.trial.Knob;
import charline.trial.Mark;
import charline.trial.Outcome;
import charline.trial.Patch;
import charline.trial.Plausibility.Doubt;
import charline.trial.Reading;
import charline.trial.Stratum;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The board and finish of a planned patch, checked against the plan. */
public final class Plans {
  private final Logbook log;

  public Plans(Logbook log) {
    this.log = log;
  }

  /** The finish last burned of the plan's family, else the only one of it; empty if it is open. */
  public Optional<Finish> finish(PlannedPatch plan) {
    List<Finish> known = finishes(plan);
    return log.patches(Filter.ALL).stream()
        .map(PatchEntry::patch)
        .map(Patch::finish)
        .filter(f -> f.family().equals(plan.family()))
        .reduce((a, b) -> b)
        .or(() -> known.size() == 1 ? Optional.of(known.get(0)) : Optional.empty());
  }

  /** The finishes of the plan's family. */
  public List<Finish> finishes(PlannedPatch plan) {
    return log.finishes().stream().filter(f -> f.family().equals(plan.family())).toList();
  }

  /**
   * A plan as something to copy from, the way a recorded patch is; what was seen is only a place
   * holder.
   */
  public static PatchEntry asPattern(PlannedPatch plan, Board board, Finish finish) {
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
            board,
            finish,
            plan.settings(),
            circumstances(plan),
            OptionalDouble.empty(),
            List.of(unread));
    return new PatchEntry(patch, Map.of(), Optional.empty(), Optional.empty(), Optional.empty());
  }

  /** As the rig usually works, with the figure of the plan. */
  private static Circumstances circumstances(PlannedPatch plan) {
    Map<Knob, Object> usual = new EnumMap<>(Knob.class);
    usual.putAll(plan.rig().usual().values());
    plan.figure().ifPresent(figure -> usual.put(Knob.FIGURE, figure.word()));
    return Circumstances.of(usual);
  }

  /**
   * Gives planned patches up, all of them or none; they stay in the log with the reason.
   *
   * @return the plans that were open and are void now
   */
  public List<PlannedPatch> giveUp(List<String> codes, String by, String why) {
    return log.voidPlans(codes, by, why);
  }

  /** A doubt about a board of another wood. */
  public static List<Doubt> doubts(PlannedPatch plan, Board board) {
    boolean planned = plan.board().filter(own -> own.id().equals(board.id())).isPresent();
    return planned || Stratum.covers(plan.wood(), board.wood())
        ? List.of()
        : List.of(
            new Doubt(
                null,
                "%s is planned for %s, and board %s is %s"
                    .formatted(plan.code(), plan.wood(), board.name(), board.wood()),
                "give a board of " + plan.wood().replace(" + ", " or ")));
  }

  /** A doubt about a finish of another family. */
  public static List<Doubt> doubts(PlannedPatch plan, Finish finish) {
    return plan.family().equals(finish.family())
        ? List.of()
        : List.of(
            new Doubt(
                null,
                "%s is planned for %s, and finish %s is %s"
                    .formatted(plan.code(), plan.family(), finish.name(), finish.family()),
                "give a finish of " + plan.family()));
  }
}
