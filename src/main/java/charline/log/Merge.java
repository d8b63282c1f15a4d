package charline.log;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * Brings another log's rows in. Rows are told apart by identity, so joining twice adds nothing. A
 * name or code that is taken by something else gives way, the old one kept; what both logs hold is
 * left to {@link Rivals}.
 */
final class Merge {
  private final Store store;
  private final PlannedPatches planned;
  private final Rivals rivals;
  private final OtherLog other;
  private final List<String> notes = new ArrayList<>();
  private final Signature signature;

  /**
   * @param name what the person calls the other log
   */
  Merge(Store store, PatchTable patches, PlannedPatches planned, String name, Signature by) {
    this.store = store;
    this.planned = planned;
    other = new OtherLog(store);
    signature = by;
    rivals = new Rivals(store, other, patches, name, by);
  }

  /**
   * Joins a log that has been found sound before.
   *
   * @param file a copy of the other log in the version of this one
   */
  Merged from(Path file, Take take) {
    store.update("ATTACH DATABASE ? AS other", file.toAbsolutePath().toString());
    try {
      return store.inTransaction(() -> rows(take));
    } finally {
      store.update("DETACH DATABASE other");
    }
  }

  private Merged rows(Take take) {
    int rigs = named("rig");
    other.newcomers("power_check").forEach(id -> other.copy("power_check", id));
    int boards = named("board");
    int finishes = named("finish");
    store.update(
        "INSERT INTO coat SELECT * FROM other.coat o WHERE NOT EXISTS (SELECT 1 FROM coat c WHERE c.finish_id = o.finish_id)");
    List<UUID> newPatches = other.newcomers("patch");
    newPatches.forEach(this::patch);
    List<UUID> newReadings = other.newcomers("reading");
    rivals.meet(take);
    int readings = 0;
    for (UUID id : newReadings) {
      readings += rivals.reading(id, take) ? 1 : 0;
    }
    plans();
    other.newcomers("photo").forEach(id -> other.copy("photo", id));
    return new Merged(
        rigs,
        boards,
        finishes,
        newPatches.size(),
        readings,
        rivals.amended(),
        rivals.settled(),
        notes,
        rivals.conflicts());
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

  private void patch(UUID id) {
    String code = other.text("patch", "code", id);
    boolean asPlanned = plannedInBoth(id);
    boolean taken = taken("patch", "code", code) || !asPlanned && planned.holds(code);
    String free = taken ? planned.nextCode() : code;
    other.copy("patch", id, "code", free);
    if (asPlanned && !taken) {
      planned.fulfil(code, id);
    }
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

  /** True if a patch of the other log fulfils there a plan that is still open here. */
  private boolean plannedInBoth(UUID patch) {
    return store
        .first(
            "SELECT 1 FROM other.planned_patch o JOIN main.planned_patch m ON m.id = o.id WHERE o.patch_id = ? AND m.patch_id IS NULL",
            row -> true,
            patch)
        .isPresent();
  }

  /** A plan keeps its code where it can; one that is fulfilled takes the code of its patch. */
  private void plans() {
    for (UUID id : other.newcomers("planned_patch")) {
      String code = other.text("planned_patch", "code", id);
      String free =
          store
              .first(
                  "SELECT p.code FROM other.planned_patch o JOIN main.patch p ON p.id = o.patch_id WHERE o.id = ?",
                  row -> row.text("code"),
                  id)
              .orElseGet(
                  () ->
                      taken("patch", "code", code) || taken("planned_patch", "code", code)
                          ? planned.nextCode()
                          : code);
      if (!free.equals(code)) {
        notes.add(
            "The planned patch %s brought in is %s here; write that on its tape and its list."
                .formatted(code, free));
      }
      other.copy("planned_patch", id, "code", free);
    }
  }

  private boolean taken(String table, String column, String value) {
    return store
        .first("SELECT 1 FROM main.%s WHERE %s = ?".formatted(table, column), row -> true, value)
        .isPresent();
  }
}
