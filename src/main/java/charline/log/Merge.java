package charline.log;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * Brings another log's rows in. Rows are told apart by identity, so joining twice adds nothing. A
 * name or code that is taken by something else gives way, the old one kept; what both logs hold is
 * left to {@link Rivals}.
 */
final class Merge {
  private final Store store;
  private final RigTable rigs;
  private final PlannedPatches planned;
  private final Rivals rivals;
  private final OtherLog other;
  private final List<String> notes = new ArrayList<>();
  private final Signature signature;
  private final String name;

  /**
   * @param name what the person calls the other log
   */
  Merge(
      Store store,
      RigTable rigs,
      PatchTable patches,
      PlannedPatches planned,
      String name,
      Signature by) {
    this.store = store;
    this.rigs = rigs;
    this.planned = planned;
    other = new OtherLog(store);
    signature = by;
    this.name = name;
    rivals = new Rivals(store, other, patches, name, by);
  }

  /**
   * Joins a log that has been found sound before.
   *
   * @param file a copy of the other log in the version of this one
   * @param sure true if patches that look like ones of this log are others
   */
  Merged from(Path file, Take take, boolean sure) {
    store.update("ATTACH DATABASE ? AS other", file.toAbsolutePath().toString());
    try {
      if (!sure) {
        refuseTwins();
      }
      return store.inTransaction(() -> rows(take));
    } finally {
      store.update("DETACH DATABASE other");
    }
  }

  /** A trial sheet imported into both logs gives every patch two identities. */
  private void refuseTwins() {
    List<String> twins = other.twins();
    if (!twins.isEmpty()) {
      throw new Refused(
          Refused.Kind.DATA,
          "%s in %s %s recorded here too, as if one trial sheet had been imported into both logs (%s%s), and would count twice; void %s in one of the logs, or add --sure if they are different patches."
              .formatted(
                  twins.size() == 1 ? "A patch" : twins.size() + " patches",
                  name,
                  twins.size() == 1 ? "is" : "are",
                  String.join(", ", twins.subList(0, Math.min(3, twins.size()))),
                  twins.size() > 3 ? " and so on" : "",
                  twins.size() == 1 ? "it" : "them"));
    }
  }

  private Merged rows(Take take) {
    DeliveredPowers before = DeliveredPowers.of(store, rigs);
    int newRigs = named("rig");
    Map<String, Integer> newChecks = powerChecks();
    int boards = named("board");
    int finishes = named("finish");
    store.update(
        "INSERT INTO coat SELECT * FROM other.coat o WHERE NOT EXISTS (SELECT 1 FROM coat c WHERE c.finish_id = o.finish_id)");
    codesGivenThere();
    List<UUID> newPatches = other.newcomers("patch");
    newPatches.forEach(this::patch);
    List<UUID> newReadings = other.newcomers("reading");
    rivals.meet(take);
    int readings = 0;
    for (UUID id : newReadings) {
      readings += rivals.reading(id, take) ? 1 : 0;
    }
    Merged.Plans plans = plans();
    OtherPhotos photos = new OtherPhotos(store, other, name);
    int newPhotos = photos.bringIn();
    return new Merged(
        newRigs,
        new Merged.Powers(newChecks, before.changedTo(DeliveredPowers.of(store, rigs))),
        boards,
        finishes,
        newPatches.size(),
        (int) newPatches.stream().filter(this::isVoid).count(),
        readings,
        plans,
        newPhotos,
        rivals.amended(),
        rivals.voided(),
        rivals.settled(),
        notes,
        rivals.conflicts(),
        photos.damage());
  }

  /** Brings power checks in, and counts them by the name that their rig has here. */
  private Map<String, Integer> powerChecks() {
    Map<String, Integer> byRig = new HashMap<>();
    for (UUID id : other.newcomers("power_check")) {
      other.copy("power_check", id);
      String rig =
          store
              .first(
                  "SELECT r.name FROM main.rig r JOIN main.power_check c ON c.rig_id = r.id WHERE c.id = ?",
                  row -> row.text("name"),
                  id)
              .orElseThrow();
      byRig.merge(rig, 1, Integer::sum);
    }
    return byRig;
  }

  private boolean isVoid(UUID patch) {
    return store
        .first(
            "SELECT 1 FROM main.patch WHERE id = ? AND voided_why IS NOT NULL", row -> true, patch)
        .isPresent();
  }

  private int named(String table) {
    List<UUID> newcomers = other.newcomers(table);
    for (UUID id : newcomers) {
      String name = other.text(table, "name", id);
      String free = name;
      for (int i = 2; taken(table, "name", free); i++) {
        free = "%s (%d)".formatted(name, i);
      }
      if (!free.equals(name)) {
        notes.add(
            "The name %s is taken by another %s here, so the one brought in is called %s."
                .formatted(name, table, free));
      }
      other.copy(table, id, "name", free);
    }
    return newcomers.size();
  }

  /** Patches that got another code when the other log took them in are called so here too. */
  private void codesGivenThere() {
    List<UUID> renamed =
        store.query(
            """
            SELECT m.id FROM main.patch m JOIN other.patch o ON o.id = m.id
            JOIN other.change c ON c.row_id = m.id AND c.what = 'patch.code'
              AND c.before = m.code AND c.after = o.code
            WHERE m.code <> o.code ORDER BY m.rowid
            """,
            row -> row.id("id"));
    for (UUID id : renamed) {
      String here = code(id);
      String there = other.text("patch", "code", id);
      if (taken("patch", "code", there) || plannedElsewhere(there, id)) {
        continue;
      }
      other.past(
          "patch_keeps_its_identity",
          () -> store.update("UPDATE main.patch SET code = ? WHERE id = ?", there, id));
      store.update(
          """
          INSERT INTO main.change (changed_at_utc, changed_at_offset, changed_by, what, row_id,
            before, after, why)
          SELECT changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why
          FROM other.change WHERE row_id = ? AND what = 'patch.code' AND after = ?
          """,
          id,
          there);
      notes.add(
          "%s is called %s in %s since it was merged there, and is called so here now; write that on its tape."
              .formatted(here, there, name));
    }
  }

  private void patch(UUID id) {
    String code = other.text("patch", "code", id);
    String free =
        taken("patch", "code", code) || plannedElsewhere(code, id) ? planned.nextCode() : code;
    other.copy("patch", id, "code", free);
    if (!free.equals(code)) {
      notes.add(
          "The code %s is taken by another patch here, so the one brought in is %s; write that on its tape."
              .formatted(code, free));
      signature.write(
          store,
          new Change(
              signature.at(),
              signature.by(),
              "patch.code",
              Optional.of(code),
              Optional.of(free),
              Optional.of("%s was taken when it was merged".formatted(code))),
          id);
    }
  }

  /** True if a code is held by an open plan that is not the one that the patch was burned for. */
  private boolean plannedElsewhere(String code, UUID patch) {
    return store
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

  /** Brings plans in, and of those of both logs what became of them there. */
  private Merged.Plans plans() {
    List<UUID> newcomers = other.newcomers("planned_patch");
    newcomers.forEach(this::plan);
    int givenUp = plansGivenUpThere();
    int burned =
        store.update(
            """
        UPDATE main.planned_patch SET patch_id =
          (SELECT o.patch_id FROM other.planned_patch o WHERE o.id = planned_patch.id)
        WHERE patch_id IS NULL AND id IN
          (SELECT o.id FROM other.planned_patch o JOIN main.patch p ON p.id = o.patch_id
           WHERE o.patch_id NOT IN
             (SELECT patch_id FROM main.planned_patch WHERE patch_id IS NOT NULL))
        """);
    return new Merged.Plans(newcomers.size(), burned, givenUp);
  }

  private int plansGivenUpThere() {
    List<UUID> givenUp =
        store.query(
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
              store.update(
                  "UPDATE main.planned_patch SET voided_why = ? WHERE id = ?",
                  other.text("planned_patch", "voided_why", id),
                  id));
      other.copyNews("planned_patch", id);
    }
    return givenUp.size();
  }

  /** A plan keeps its code where it can; one that is fulfilled takes the code of its patch. */
  private void plan(UUID id) {
    String code = other.text("planned_patch", "code", id);
    Optional<String> burned =
        store.first(
            "SELECT p.code FROM other.planned_patch o JOIN main.patch p ON p.id = o.patch_id WHERE o.id = ?",
            row -> row.text("code"),
            id);
    boolean taken = taken("patch", "code", code) || taken("planned_patch", "code", code);
    String free = burned.orElseGet(() -> taken ? planned.nextCode() : code);
    if (burned.isEmpty() && taken) {
      notes.add(
          "The code %s of the planned patch brought in is taken here, so it is planned as %s; write that on its tape and its list."
              .formatted(code, free));
    }
    other.copy("planned_patch", id, "code", free);
  }

  private String code(UUID patch) {
    return store
        .first("SELECT code FROM main.patch WHERE id = ?", row -> row.text("code"), patch)
        .orElseThrow();
  }

  private boolean taken(String table, String column, String value) {
    return store
        .first("SELECT 1 FROM main.%s WHERE %s = ?".formatted(table, column), row -> true, value)
        .isPresent();
  }
}
