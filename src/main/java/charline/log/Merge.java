package charline.log;

import charline.refusal.Refusal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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
  private final MergedCodes codes;
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
    this.name = name;
    codes = new MergedCodes(store, other, planned, name, by, notes);
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
      throw Refusal.data(
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
    List.of("rig", "board", "finish").forEach(this::namesGivenThere);
    int newRigs = named("rig");
    Map<String, Integer> newChecks = powerChecks();
    int boards = named("board");
    int finishes = named("finish");
    store.update(
        "INSERT INTO coat SELECT * FROM other.coat o WHERE NOT EXISTS (SELECT 1 FROM coat c WHERE"
            + " c.finish_id = o.finish_id)");
    codes.followThere();
    List<UUID> newPatches = other.newcomers("patch");
    newPatches.forEach(this::patch);
    List<UUID> newReadings = other.newcomers("reading");
    rivals.meet(take);
    int readings = 0;
    for (UUID id : newReadings) {
      readings += rivals.reading(id, take) ? 1 : 0;
    }
    Merged.Plans plans = new OtherPlans(store, other, planned, codes, notes).bringIn();
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

  /** What was renamed there is called so here too, unless it was renamed here as well. */
  private void namesGivenThere(String table) {
    for (UUID id : other.renamed(table)) {
      String here = text(table, id);
      String there = other.text(table, "name", id);
      if (other.hasNewName(table, id) && !other.missesNewName(table, id)) {
        boolean free = here.equalsIgnoreCase(there) || !taken(table, there);
        if (free) {
          other.past(
              table + "_changes_are_kept",
              () ->
                  store.update(
                      "UPDATE main.%s SET name = ? WHERE id = ?".formatted(table), there, id));
          other.copyNewName(table, id);
        }
        notes.add(
            free
                ? "The %s %s was renamed in %s, and is called %s here too now."
                    .formatted(table, here, name, there)
                : "The %s %s is called %s in %s, but that name is taken here, so it stays as it is; rename one of them."
                    .formatted(table, here, there, name));
      } else if (other.hasNewName(table, id)) {
        notes.add(
            "The %s %s was renamed here and in %s, where it is called %s; it stays as it is."
                .formatted(table, here, name, there));
      }
    }
  }

  private String text(String table, UUID id) {
    return store
        .first(
            "SELECT name FROM main.%s WHERE id = ?".formatted(table), row -> row.text("name"), id)
        .orElseThrow();
  }

  /** Brings power checks in, and counts them by the name that their rig has here. */
  private Map<String, Integer> powerChecks() {
    Map<String, Integer> byRig = new HashMap<>();
    for (UUID id : other.newcomers("power_check")) {
      other.copy("power_check", id);
      String rig =
          store
              .first(
                  "SELECT r.name FROM main.rig r JOIN main.power_check c ON c.rig_id = r.id WHERE"
                      + " c.id = ?",
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
      for (int i = 2; taken(table, free); i++) {
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
    String free =
        codes.taken("patch", code) || codes.plannedElsewhere(code, id)
            ? codes.plannedHere(id).orElseGet(planned::nextCode)
            : code;
    other.copy("patch", id, "code", free);
    if (!free.equals(code)) {
      notes.add(
          "The code %s is taken by another patch here, so the one brought in is %s; write that on its tape."
              .formatted(code, free));
      codes.write("patch", id, code, free, "%s was taken when it was merged".formatted(code));
    }
  }

  private boolean taken(String table, String name) {
    return store
        .first("SELECT 1 FROM main.%s WHERE name = ?".formatted(table), row -> true, name)
        .isPresent();
  }
}
