package charline.log;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;

/**
 * Brings another log's rows in. Rows are told apart by identity, so joining twice adds nothing;
 * what both logs hold stays as it is here. A name or code that is taken by something else gives
 * way.
 */
final class Merge {
  private final Store store;
  private final PlannedPatches planned;
  private final List<String> notes = new ArrayList<>();

  Merge(Store store, PlannedPatches planned) {
    this.store = store;
    this.planned = planned;
  }

  /** Joins a log that has been opened and found sound before. */
  Merged from(Path other) {
    store.update("ATTACH DATABASE ? AS other", other.toAbsolutePath().toString());
    try {
      return store.inTransaction(this::rows);
    } finally {
      store.update("DETACH DATABASE other");
    }
  }

  private Merged rows() {
    int rigs = named("rig");
    newcomers("power_check").forEach(id -> copy("power_check", id));
    int boards = named("board");
    int finishes = named("finish");
    store.update(
        "INSERT INTO coat SELECT * FROM other.coat o WHERE NOT EXISTS (SELECT 1 FROM coat c WHERE c.finish_id = o.finish_id)");
    int patches = patches();
    int readings = readings();
    plans();
    newcomers("photo").forEach(id -> copy("photo", id));
    return new Merged(rigs, boards, finishes, patches, readings, notes);
  }

  /** Identities that only the other log has, in the order of their recording. */
  private List<UUID> newcomers(String table) {
    return store.query(
        "SELECT id FROM other.%1$s WHERE id NOT IN (SELECT id FROM main.%1$s) ORDER BY rowid"
            .formatted(table),
        row -> row.id("id"));
  }

  private int named(String table) {
    List<UUID> newcomers = newcomers(table);
    for (UUID id : newcomers) {
      String name = otherText(table, "name", id);
      String free = name;
      for (int i = 2; taken(table, "name", free); i++) {
        free = "%s (%d)".formatted(name, i);
      }
      if (!free.equals(name)) {
        notes.add(
            "The name %s is taken by another %s here, so the one brought in is called %s."
                .formatted(name, table, free));
      }
      copy(table, id, "name", free);
    }
    return newcomers.size();
  }

  private int patches() {
    List<UUID> newcomers = newcomers("patch");
    for (UUID id : newcomers) {
      String code = otherText("patch", "code", id);
      boolean asPlanned = plannedInBoth(id);
      boolean taken = taken("patch", "code", code) || !asPlanned && planned.holds(code);
      String free = taken ? planned.nextCode() : code;
      if (!free.equals(code)) {
        notes.add(
            "The code %s is taken by another patch here, so the one brought in is %s; write that on its tape."
                .formatted(code, free));
      }
      copy("patch", id, "code", free);
      if (asPlanned && !taken) {
        planned.fulfil(code, id);
      }
    }
    return newcomers.size();
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
    for (UUID id : newcomers("planned_patch")) {
      String code = otherText("planned_patch", "code", id);
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
      copy("planned_patch", id, "code", free);
    }
  }

  private int readings() {
    int added = 0;
    for (UUID id : newcomers("reading")) {
      boolean clash =
          store
              .first(
                  """
                  SELECT 1 FROM other.reading o JOIN main.reading r
                    ON r.patch_id = o.patch_id AND r.passes = o.passes AND r.voided_why IS NULL
                  WHERE o.id = ? AND o.voided_why IS NULL
                  """,
                  row -> true,
                  id)
              .isPresent();
      if (clash) {
        String patch = otherText("reading", "patch_id", id);
        notes.add(
            "A reading of %s after %s passes was left out, as this log has another one there."
                .formatted(
                    store
                        .first(
                            "SELECT code FROM main.patch WHERE id = ?", r -> r.text("code"), patch)
                        .orElseThrow(),
                    otherText("reading", "passes", id)));
      } else {
        copy("reading", id);
        added++;
      }
    }
    return added;
  }

  private boolean taken(String table, String column, String value) {
    return store
        .first("SELECT 1 FROM main.%s WHERE %s = ?".formatted(table, column), row -> true, value)
        .isPresent();
  }

  private String otherText(String table, String column, UUID id) {
    return store
        .first(
            "SELECT %s AS value FROM other.%s WHERE id = ?".formatted(column, table),
            row -> row.text("value"),
            id)
        .orElseThrow();
  }

  private void copy(String table, UUID id) {
    copy(table, id, "id", id.toString());
  }

  /** Copies a row and its history, one column taking a value of ours. */
  private void copy(String table, UUID id, String column, String value) {
    List<String> columns =
        store
            .query("SELECT name FROM pragma_table_info(?)", row -> row.text("name"), table)
            .stream()
            .filter(c -> !c.equals("recorded")) // the order of recording is this log's own
            .toList();
    String values =
        columns.stream().map(c -> c.equals(column) ? "?" : c).collect(Collectors.joining(", "));
    store.update(
        "INSERT INTO main.%s (%s) SELECT %s FROM other.%s WHERE id = ?"
            .formatted(table, String.join(", ", columns), values, table),
        value,
        id);
    store.update(
        """
        INSERT INTO main.change (changed_at_utc, changed_at_offset, changed_by, what, row_id,
          before, after, why)
        SELECT changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why
        FROM other.change WHERE row_id = ? ORDER BY number
        """,
        id);
  }
}
