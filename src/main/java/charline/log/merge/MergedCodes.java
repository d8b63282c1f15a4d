package charline.log.merge;

import charline.log.Change;
import charline.log.Logbook;
import charline.log.database.Database;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * Codes of patches and plans where two logs gave one code to two things. What is on the tape must
 * mean one patch in both logs, so a code that was given in a merge goes back with its history.
 */
final class MergedCodes {
  private static final String STAYS = "planned_patch_stays_as_it_was_planned";
  private static final String STAYS_FULFILLED = "planned_patch_is_fulfilled_once";

  /** Changes of the code of ?1 that one log has and the other has not heard of. */
  private static final String NEWS =
      """
      FROM %1$s.change o WHERE o.row_id = ?1 AND o.what = ?2
        AND NOT EXISTS (SELECT 1 FROM %2$s.change m
          WHERE m.row_id = o.row_id AND m.what = o.what AND m.changed_at_utc = o.changed_at_utc
            AND m.before IS o.before AND m.after IS o.after)
      """;

  private final Logbook log;
  private final Database database;
  private final OtherLog other;
  private final String name;
  private final Attribution attribution;
  private final List<String> notes;

  /** A patch or a plan of both logs that is called otherwise in the other one. */
  private record Renamed(String table, UUID id) {}

  /**
   * @param name what the person calls the other log
   * @param notes gets a sentence for each code that is another one from now on
   */
  MergedCodes(
      Logbook log, OtherLog other, String name, Attribution attribution, List<String> notes) {
    this.log = log;
    database = log.database();
    this.other = other;
    this.name = name;
    this.attribution = attribution;
    this.notes = notes;
  }

  /** What got another code when the other log took it in is called so here too. */
  void followThere() {
    List<Renamed> left = new ArrayList<>(renamedThere("patch"));
    left.addAll(renamedThere("planned_patch"));
    followWherePossible(left);
    // Where both logs merged a copy of the other, each has given away a code that the other took.
    while (!left.isEmpty()) {
      takeNewCode(left.remove(0));
      followWherePossible(left);
    }
  }

  private void followWherePossible(List<Renamed> left) {
    while (left.removeIf(this::followed)) {
      // One that was followed may have made room for another.
    }
  }

  private List<Renamed> renamedThere(String table) {
    return database
        .query(
            "SELECT m.id FROM main.%1$s m JOIN other.%1$s o ON o.id = m.id WHERE m.code <> o.code ORDER BY m.rowid"
                .formatted(table),
            row -> new Renamed(table, row.id("id")))
        .stream()
        .filter(this::hasNews)
        .toList();
  }

  private boolean hasNews(Renamed it) {
    return database
        .first(
            "SELECT 1 " + NEWS.formatted("other", "main"),
            row -> true,
            it.id(),
            it.table() + ".code")
        .isPresent();
  }

  private boolean followed(Renamed it) {
    String here = code("main", it);
    String there = code("other", it);
    if (!free(there, it)) {
      return false;
    }
    rename(it, there);
    copyNews(it);
    notes.add(
        it.table().equals("patch")
            ? "%s got the code %s when it was merged into %s, and has it here now too; write that on its tape."
                .formatted(here, there, name)
            : "The planned patch %s got the code %s when it was merged into %s, and has it here now too; write that on its tape and its list."
                .formatted(here, there, name));
    return true;
  }

  private void takeNewCode(Renamed it) {
    String here = code("main", it);
    String there = code("other", it);
    String next = log.nextPatchCode();
    rename(it, next);
    copyNews(it);
    write(it.table(), it.id(), here, next, "%s is another patch here".formatted(there));
    notes.add(
        "%s has the code %s in %s, which another patch has here, so its code is now %s; write that on its tape."
            .formatted(here, there, name, next));
  }

  private void copyNews(Renamed it) {
    database.update(
        """
        INSERT INTO main.change (changed_at_utc, changed_at_offset, changed_by, what, row_id,
          before, after, why)
        SELECT changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why
        """
            + NEWS.formatted("other", "main")
            + " ORDER BY o.number",
        it.id(),
        it.table() + ".code");
  }

  private boolean free(String code, Renamed it) {
    return it.table().equals("patch")
        ? !taken("patch", code) && !plannedElsewhere(code, it.id())
        : !taken("planned_patch", code) && !burnedElsewhere(code, it.id());
  }

  private void rename(Renamed it, String after) {
    if (it.table().equals("patch")) {
      other.past(
          "patch_keeps_its_identity",
          () -> database.update("UPDATE main.patch SET code = ? WHERE id = ?", after, it.id()));
    } else {
      callPlan(it.id(), after);
    }
  }

  /** Gives a plan another code; nothing else of a plan ever changes. */
  private void callPlan(UUID plan, String code) {
    other.past(
        STAYS,
        () ->
            other.past(
                STAYS_FULFILLED,
                () ->
                    database.update(
                        "UPDATE main.planned_patch SET code = ? WHERE id = ?", code, plan)));
  }

  /** Lets a plan be called as the patch that fulfils it, if no other plan is. */
  void callAsItsPatch(UUID plan, String patchCode) {
    String before = code("main", new Renamed("planned_patch", plan));
    if (!before.equals(patchCode) && !taken("planned_patch", patchCode)) {
      callPlan(plan, patchCode);
      write("planned_patch", plan, before, patchCode, "burned as " + patchCode);
    }
  }

  /** The code of the open plan here that a patch of the other log was burned for. */
  Optional<String> plannedHere(UUID patch) {
    return database
        .first(
            """
            SELECT m.code FROM main.planned_patch m JOIN other.planned_patch o ON o.id = m.id
            WHERE o.patch_id = ? AND m.patch_id IS NULL
            """,
            row -> row.text("code"),
            patch)
        .filter(code -> !taken("patch", code));
  }

  /** True if a code belongs to an open plan other than the one that the patch was burned for. */
  boolean plannedElsewhere(String code, UUID patch) {
    return database
        .first(
            """
            SELECT 1 FROM main.planned_patch m WHERE m.code = ? AND m.patch_id IS NULL
            AND m.id NOT IN (SELECT id FROM other.planned_patch WHERE patch_id = ?)
            """,
            row -> true,
            code,
            patch)
        .isPresent();
  }

  private boolean burnedElsewhere(String code, UUID plan) {
    return database
        .first(
            """
            SELECT 1 FROM main.patch p WHERE p.code = ?1
            AND p.id IS NOT (SELECT patch_id FROM main.planned_patch WHERE id = ?2)
            """,
            row -> true,
            code,
            plan)
        .isPresent();
  }

  boolean taken(String table, String code) {
    return database
        .first("SELECT 1 FROM main.%s WHERE code = ?".formatted(table), row -> true, code)
        .isPresent();
  }

  /** Writes down that something has another code. */
  void write(String table, UUID id, String before, String after, String why) {
    attribution.write(
        database,
        new Change(
            attribution.at(),
            attribution.by(),
            table + ".code",
            Optional.of(before),
            Optional.of(after),
            Optional.of(why)),
        id);
  }

  private String code(String log, Renamed it) {
    return database
        .first(
            "SELECT code FROM %s.%s WHERE id = ?".formatted(log, it.table()),
            row -> row.text("code"),
            it.id())
        .orElseThrow();
  }
}
