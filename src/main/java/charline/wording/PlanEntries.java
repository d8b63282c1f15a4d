package charline.wording;

import charline.answer.NextAnswer;
import charline.exposure.Figure;
import charline.log.PlanCondition;
import charline.log.PlannedPatch;
import charline.plan.NextPatches;
import charline.plan.Suggestion;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;

/** Patches to burn next as plans of the log, which gives them their codes. */
public final class PlanEntries {
  private final NextAnswer answer;
  private final Supplier<UUID> newId;
  private final OffsetDateTime at;
  private final String by;

  /**
   * @param newId gives each plan its identity
   * @param at when it is planned
   * @param by who plans it
   */
  public PlanEntries(NextAnswer answer, Supplier<UUID> newId, OffsetDateTime at, String by) {
    this.answer = answer;
    this.newId = newId;
    this.at = at;
    this.by = by;
  }

  /** All of them in their order, each with what must come first. */
  public List<PlannedPatch> all() {
    List<PlannedPatch> plans = new ArrayList<>();
    for (Suggestion s : answer.next().suggestions()) {
      plans.add(
          plan(
              s,
              s.onlyAfter().isEmpty()
                  ? Optional.empty()
                  : Optional.of(PlanCondition.noChar(plans.get(s.onlyAfter().getAsInt() - 1)))));
    }
    return plans;
  }

  /** One that waits for no other. */
  public PlannedPatch of(Suggestion free) {
    return plan(free, Optional.empty());
  }

  /** What was asked for, else what most patches of this way were burned with. */
  private Optional<Figure> figure() {
    return answer
        .question()
        .way()
        .figure()
        .or(() -> answer.tried().flatMap(tried -> tried.trials().way().figure()));
  }

  private PlannedPatch plan(Suggestion s, Optional<PlanCondition> condition) {
    NextPatches next = answer.next();
    return new PlannedPatch(
        newId.get(),
        "",
        answer.stratum().family(),
        answer.stratum().wood(),
        next.bench().rig(),
        s.place().board(),
        s.place().name(),
        s.settings(),
        figure(),
        s.passes(),
        s.purpose().word(),
        PlanText.motive(s.motive()),
        condition,
        at,
        Optional.of(by),
        false,
        Optional.empty());
  }
}
