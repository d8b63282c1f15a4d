package charline.log.merge;

import charline.log.Logbook;
import charline.log.database.Database;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Plans of the log that is attached as {@code other}, and what became of them there. */
final class OtherPlans {
  private final Logbook log;
  private final Database database;
  private final OtherLog other;
  private final MergedCodes codes;
  private final List<String> notes;

  OtherPlans(Logbook log, OtherLog other, MergedCodes codes, List<String> notes) {
    this.log = log;
    database = log.database();
    this.other = other;
    this.codes = codes;
    this.notes = notes;
  }

  /** Brings plans in, and of those of both logs what became of them there. */
  Merged.Plans bringIn() {
    List<UUID> newcomers = other.newcomers("planned_patch");
    newcomers.forEach(this::plan);
    int givenUp = givenUpThere();
    return new Merged.Plans(newcomers.size(), burnedThere(), givenUp);
  }

  /** A plan keeps its code where it can; one that is fulfilled takes the code of its patch. */
  private void plan(UUID id) {
    String code = other.text("planned_patch", "code", id);
    Optional<String> burned =
        database.first(
            "SELECT p.code FROM other.planned_patch o JOIN main.patch p ON p.id = o.patch_id WHERE"
                + " o.id = ?",
            row -> row.text("code"),
            id);
    boolean taken = codes.taken("patch", code) || codes.taken("planned_patch", code);
    String free = burned.orElseGet(() -> taken ? log.nextPatchCode() : code);
    if (burned.isEmpty() && taken) {
      notes.add(
          "The code %s of a merged planned patch is taken here, so its code is now %s; write that on its tape and its list."
              .formatted(code, free));
    }
    other.copy("planned_patch", id, "code", free);
    if (!free.equals(code)) {
      codes.write(
          "planned_patch", id, code, free, "%s was taken when it was merged".formatted(code));
    }
  }

  private record Burned(UUID plan, UUID patch, String code) {}

  private int burnedThere() {
    List<Burned> burned =
        database.query(
            """
            SELECT m.id AS plan, p.id AS patch, p.code FROM main.planned_patch m
            JOIN other.planned_patch o ON o.id = m.id JOIN main.patch p ON p.id = o.patch_id
            WHERE m.patch_id IS NULL AND p.id NOT IN
              (SELECT patch_id FROM main.planned_patch WHERE patch_id IS NOT NULL)
            """,
            row -> new Burned(row.id("plan"), row.id("patch"), row.text("code")));
    for (Burned it : burned) {
      codes.callAsItsPatch(it.plan(), it.code());
      database.update(
          "UPDATE main.planned_patch SET patch_id = ? WHERE id = ?", it.patch(), it.plan());
    }
    return burned.size();
  }

  private int givenUpThere() {
    List<UUID> givenUp =
        database.query(
            """
            SELECT m.id FROM main.planned_patch m JOIN other.planned_patch o ON o.id = m.id
            WHERE m.patch_id IS NULL AND m.voided_why IS NULL AND o.voided_why IS NOT NULL
            """,
            row -> row.id("id"));
    for (UUID id : givenUp) {
      // The change was written down there already; the trigger would write it a second time.
      other.past(
          "planned_patch_changes_are_kept",
          () ->
              database.update(
                  "UPDATE main.planned_patch SET voided_why = ? WHERE id = ?",
                  other.text("planned_patch", "voided_why", id),
                  id));
      other.copyNews("planned_patch", id);
    }
    return givenUp.size();
  }
}
