package charline.log;

import charline.exposure.Figure;
import charline.log.database.Database;
import charline.log.database.ResultRow;
import charline.log.database.RowValues;
import charline.log.reference.Nearest;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Rig;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** The patches that are to be burned, and the codes they hold. */
public final class PlannedPatches {
  private final Database database;
  private final RigTable rigs;
  private final BoardTable boards;
  private final PatchTable patches;

  PlannedPatches(Database database, RigTable rigs, BoardTable boards, PatchTable patches) {
    this.database = database;
    this.rigs = rigs;
    this.boards = boards;
    this.patches = patches;
  }

  /** The code that neither a patch nor a plan holds. */
  String nextCode() {
    long planned =
        database
            .first(
                """
                SELECT CAST(substr(code, 3) AS INTEGER) AS number FROM planned_patch
                WHERE code GLOB 'P-[0-9]*' AND NOT code GLOB 'P-*[^0-9]*' AND length(code) <= 11
                  AND number <= ?
                ORDER BY number DESC LIMIT 1
                """,
                row -> (long) row.number("number"),
                PatchCode.LAST_COUNTED)
            .orElse(0L);
    return PatchCode.of(Math.max(patches.highestNumber(), planned) + 1);
  }

  /**
   * Records plans, each with the next free code in place of its own, all of them or none.
   *
   * @return the plans with their codes, in their order
   */
  public List<PlannedPatch> reserve(List<PlannedPatch> plans) {
    return database.inTransaction(
        () -> {
          List<PlannedPatch> coded = new ArrayList<>();
          for (PlannedPatch plan : plans) {
            PlannedPatch own = plan.coded(nextCode());
            add(own);
            coded.add(own);
          }
          return coded;
        });
  }

  private void add(PlannedPatch plan) {
    RowValues values =
        new RowValues()
            .put("id", plan.id())
            .put("code", plan.code())
            .put("family", plan.family())
            .put("wood", plan.wood())
            .put("rig_id", plan.rig().id())
            .put("board_id", plan.board().map(Board::id))
            .put("place", plan.place());
    database.insert(
        "planned_patch",
        SettingsColumns.put(values, plan.settings())
            .put("figure", plan.figure().map(Figure::word))
            .put("passes", plan.passes())
            .put("purpose", plan.purpose())
            .put("reason", plan.reason())
            .put("depends_on", plan.condition().map(PlanCondition::plan))
            .put("condition", plan.condition().map(c -> c.kind().word()))
            .moment("planned_at", plan.plannedAt())
            .put("planned_by", plan.by()));
  }

  /** All plans in the order of their codes, fulfilled and void ones included. */
  public List<PlannedPatch> all() {
    return database.inSnapshot(
        () ->
            database.query(
                """
                SELECT p.*, earlier.code AS depends_on_code FROM planned_patch p
                LEFT JOIN planned_patch earlier ON earlier.id = p.depends_on
                ORDER BY length(p.code), p.code
                """,
                this::read));
  }

  /** Plans that are still to be burned. */
  public List<PlannedPatch> open() {
    return all().stream().filter(PlannedPatch::open).toList();
  }

  /**
   * The open plan of that code, which may be shortened as that of a patch may.
   *
   * @throws Refusal if there is none, or if it is fulfilled already or void
   */
  public PlannedPatch open(String typed) {
    String code = typed.strip();
    String spelled = PatchCode.spelledOut(code).orElse(code);
    List<PlannedPatch> all = all();
    PlannedPatch plan =
        all.stream()
            .filter(p -> p.code().equalsIgnoreCase(code) || p.code().equalsIgnoreCase(spelled))
            .findFirst()
            .orElseThrow(
                () ->
                    Nearest.refusal(
                        "planned patch", code, all.stream().map(PlannedPatch::code).toList()));
    if (plan.fulfilled()) {
      throw Refusal.usage(
          "Planned patch %s was burned already; add a further reading to it."
              .formatted(plan.code()));
    }
    plan.voided()
        .ifPresent(
            why -> {
              throw Refusal.usage(
                  "Planned patch %s is void: %s. Its code stays taken; plan a new patch instead."
                      .formatted(plan.code(), why));
            });
    return plan;
  }

  /** To be called where changes are kept under a name and a reason. */
  void giveUp(List<PlannedPatch> plans, String why) {
    plans.forEach(
        plan ->
            database.update(
                "UPDATE planned_patch SET voided_why = ? WHERE id = ?", why, plan.id()));
  }

  private PlannedPatch read(ResultRow row) throws SQLException {
    UUID rigId = row.id("rig_id");
    Rig rig =
        rigs.alsoJoined().stream().filter(r -> r.id().equals(rigId)).findFirst().orElseThrow();
    Optional<UUID> boardId = row.optionalText("board_id").map(UUID::fromString);
    return new PlannedPatch(
        row.id("id"),
        row.text("code"),
        row.text("family"),
        row.text("wood"),
        rig,
        boardId.flatMap(boards::byId),
        row.text("place"),
        SettingsColumns.read(row),
        row.optionalText("figure").map(Figure::new),
        row.whole("passes"),
        row.text("purpose"),
        row.text("reason"),
        condition(row),
        row.moment("planned_at"),
        row.optionalText("planned_by"),
        row.has("patch_id"),
        row.optionalText("voided_why"));
  }

  private static Optional<PlanCondition> condition(ResultRow row) throws SQLException {
    return row.has("condition")
        ? Optional.of(
            new PlanCondition(
                row.id("depends_on"),
                row.text("depends_on_code"),
                PlanCondition.Kind.ofWord(row.text("condition"))))
        : Optional.empty();
  }

  /** Whether there are plans that no patch holds the code of. */
  boolean anyWithoutPatch() {
    return database
        .first("SELECT 1 FROM planned_patch WHERE patch_id IS NULL LIMIT 1", row -> true)
        .isPresent();
  }

  /** Ticks off the plan that holds a patch's code, if one does. */
  void fulfil(String code, UUID patch) {
    database.update(
        "UPDATE planned_patch SET patch_id = ? WHERE code = ? AND patch_id IS NULL", patch, code);
  }
}
