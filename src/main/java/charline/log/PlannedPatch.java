package charline.log;

import charline.exposure.Figure;
import charline.exposure.Settings;
import charline.trial.Board;
import charline.trial.PlainText;
import charline.trial.Rig;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.UUID;

/**
 * A patch that is to be burned.
 *
 * @param id permanent identity
 * @param code the code it holds
 * @param family coating family
 * @param wood the log's word, or any
 * @param rig the rig
 * @param board the board, empty if not chosen yet
 * @param place what it is to be burned on, in words
 * @param settings settings to use
 * @param figure what the head is to draw; empty for whatever the rig usually draws
 * @param passes to be read after every pass up to this one
 * @param purpose why, in a word
 * @param reason why, in a few words
 * @param condition what must have happened on another plan before, if anything
 * @param plannedAt when it was planned
 * @param by who planned it, if noted
 * @param fulfilled true once a patch is recorded under its code
 * @param voided why it is not to be burned after all, if so
 */
public record PlannedPatch(
    UUID id,
    String code,
    String family,
    String wood,
    Rig rig,
    Optional<Board> board,
    String place,
    Settings settings,
    Optional<Figure> figure,
    int passes,
    String purpose,
    String reason,
    Optional<PlanCondition> condition,
    OffsetDateTime plannedAt,
    Optional<String> by,
    boolean fulfilled,
    Optional<String> voided) {
  public PlannedPatch {
    place = PlainText.of(place);
    reason = PlainText.of(reason);
    by = PlainText.answer(by);
    voided = voided.map(PlainText::of);
  }

  /** The reason with the condition: "next rung up; only if P-0050 did not char". */
  public String reasonInFull() {
    return reason + condition.map(c -> "; " + c.words()).orElse("");
  }

  /** True if it is still to be burned. */
  public boolean open() {
    return !fulfilled && voided.isEmpty();
  }

  /** Whether both ask for the same patch, whoever planned it and when. */
  public boolean asksTheSameAs(PlannedPatch other) {
    return family.equals(other.family)
        && wood.equals(other.wood)
        && rig.id().equals(other.rig.id())
        && place.equals(other.place)
        && settings.equals(other.settings)
        && figure.equals(other.figure)
        && passes == other.passes
        && purpose.equals(other.purpose)
        && condition.equals(other.condition);
  }

  /** The same under a code. */
  public PlannedPatch coded(String reserved) {
    return new PlannedPatch(
        id, reserved, family, wood, rig, board, place, settings, figure, passes, purpose, reason,
        condition, plannedAt, by, fulfilled, voided);
  }
}
