package charline.log.merge;

import charline.log.History;
import charline.log.Joins;
import charline.log.Logbook;
import charline.log.database.Database;
import charline.progress.WorkWatch;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

/** The rows of the log that is attached as {@code other}, brought into this one. */
final class OtherRows {
  private final Logbook log;
  private final Database database;
  private final OtherLog other;
  private final MergeConflicts conflicts;
  private final List<String> notes = new ArrayList<>();

  /** Rigs, boards and finishes that this merge brings; of earlier ones the person has read. */
  private final Set<UUID> newlyNamed = new HashSet<>();

  private final MergedCodes codes;
  private final String name;
  private final Attribution by;
  private final boolean join;
  private final WorkWatch progress;

  /**
   * @param name what the person calls the other log
   * @param join join what both logs set up under one name and agree in
   * @param progress is told how far it is
   */
  OtherRows(Logbook log, String name, Attribution by, boolean join, WorkWatch progress) {
    this.progress = progress;
    this.log = log;
    this.name = name;
    this.by = by;
    this.join = join;
    database = log.database();
    other = new OtherLog(database);
    codes = new MergedCodes(log, other, name, by, notes);
    conflicts = new MergeConflicts(log, other, name, by);
  }

  /**
   * Brings everything in that only the other log has, and joins what both have.
   *
   * @param there the powers of patches as the other log has them
   */
  Merged bringIn(Resolution take, DeliveredPowers there) {
    DeliveredPowers before = DeliveredPowers.of(log).or(there);
    OtherWords words = new OtherWords(database, other, name, notes);
    int woods = words.bringIn("wood", "wood", "wood_alias");
    int families = words.bringIn("family", "coating_family", "family_alias");
    List.of("rig", "board", "finish").forEach(this::namesGivenThere);
    int newRigs = named("rig");
    Map<String, Integer> newChecks = ofRigs("power_check");
    Map<String, Integer> newUpkeep = ofRigs("upkeep");
    int boards = named("board");
    int finishes = named("finish");
    database.update(
        "INSERT INTO coat SELECT * FROM other.coat o WHERE NOT EXISTS (SELECT 1 FROM coat c WHERE"
            + " c.finish_id = o.finish_id)");
    List<UUID> newSamples = other.newcomers("sample");
    newSamples.forEach(this::sample);
    codes.followThere();
    List<UUID> newPatches = other.newcomers("patch");
    for (int i = 0; i < newPatches.size(); i++) {
      progress.at("Merging patches of " + name, i, newPatches.size());
      patch(newPatches.get(i));
    }
    List<UUID> newReadings = other.newcomers("reading");
    conflicts.reconcile(take);
    int readings = 0;
    for (UUID id : newReadings) {
      progress.at("Merging readings of " + name, readings, newReadings.size());
      readings += conflicts.reading(id, take) ? 1 : 0;
    }
    Merged.Plans plans = new OtherPlans(log, other, codes, notes).bringIn();
    OtherPhotos photos = new OtherPhotos(database, other, name);
    int newPhotos = photos.bringIn();
    List<SetUpTwice> twice = SetUpTwice.of(log);
    joinAll(join ? twice : List.of());
    return new Merged(
        woods,
        families,
        newRigs,
        new Merged.Powers(newChecks, before.changedTo(DeliveredPowers.of(log))),
        newUpkeep,
        boards,
        finishes,
        newSamples.size(),
        newPatches.size(),
        (int) newPatches.stream().filter(this::isVoid).count(),
        readings,
        plans,
        newPhotos,
        conflicts.amended(),
        conflicts.voided(),
        conflicts.settled(),
        notes,
        conflicts.unresolved(),
        photos.damage(),
        join ? List.of() : twice.stream().filter(t -> newlyNamed.contains(t.from())).toList(),
        join ? twice : List.of());
  }

  /** Joins what was set up twice, and lets what came in follow what was joined before. */
  private void joinAll(List<SetUpTwice> twice) {
    Joins joins = new Joins(database);
    new History(database)
        .amending(
            by.at(),
            by.by().orElse(null),
            "joined when %s was merged".formatted(name),
            () -> {
              twice.forEach(pair -> joins.join(pair.kind(), pair.from(), pair.into()));
              joins.settle();
            });
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
                  database.update(
                      "UPDATE main.%s SET name = ? WHERE id = ?".formatted(table), there, id));
          other.copyNewName(table, id);
        }
        notes.add(
            free
                ? "The %s %s was renamed in %s, and is called %s here too now."
                    .formatted(table, here, name, there)
                : "The %s %s is called %s in %s, but that name is taken here, so it keeps its name; rename one of them."
                    .formatted(table, here, there, name));
      } else if (other.hasNewName(table, id)) {
        notes.add(
            "The %s %s was renamed here and in %s, where it is called %s; it keeps its name here."
                .formatted(table, here, name, there));
      }
    }
  }

  private String text(String table, UUID id) {
    return database
        .first(
            "SELECT name FROM main.%s WHERE id = ?".formatted(table), row -> row.text("name"), id)
        .orElseThrow();
  }

  /** Brings what belongs to rigs in, and counts it by the name that its rig has here. */
  private Map<String, Integer> ofRigs(String table) {
    Map<String, Integer> byRig = new HashMap<>();
    for (UUID id : other.newcomers(table)) {
      other.copy(table, id);
      String rig =
          database
              .first(
                  "SELECT r.name FROM main.rig r JOIN main.%s c ON c.rig_id = r.id WHERE c.id = ?"
                      .formatted(table),
                  row -> row.text("name"),
                  id)
              .orElseThrow();
      byRig.merge(rig, 1, Integer::sum);
    }
    return byRig;
  }

  private boolean isVoid(UUID patch) {
    return database
        .first(
            "SELECT 1 FROM main.patch WHERE id = ? AND voided_why IS NOT NULL", row -> true, patch)
        .isPresent();
  }

  private int named(String table) {
    List<UUID> newcomers = other.newcomers(table);
    newlyNamed.addAll(newcomers);
    for (UUID id : newcomers) {
      String name = other.text(table, "name", id);
      String free = name;
      for (int i = 2; taken(table, free); i++) {
        free = "%s (%d)".formatted(name, i);
      }
      if (!free.equals(name)) {
        notes.add(
            "The name %s is taken by another %s here, so the merged one is called %s."
                .formatted(name, table, free));
      }
      other.copy(table, id, "name", free);
    }
    return newcomers.size();
  }

  private void sample(UUID id) {
    String code = other.text("sample", "code", id);
    String free = codes.taken("sample", code) ? log.samples().nextCode() : code;
    other.copy("sample", id, "code", free);
    if (!free.equals(code)) {
      notes.add(
          "The code %s is taken by another sample here, so the merged one is %s."
              .formatted(code, free));
      codes.write("sample", id, code, free, "%s was taken when it was merged".formatted(code));
    }
  }

  private void patch(UUID id) {
    String code = other.text("patch", "code", id);
    String free =
        codes.taken("patch", code) || codes.plannedElsewhere(code, id)
            ? codes.plannedHere(id).orElseGet(log::nextPatchCode)
            : code;
    other.copy("patch", id, "code", free);
    if (!free.equals(code)) {
      notes.add(
          "The code %s is taken by another patch here, so the merged one is %s; write that on its tape."
              .formatted(code, free));
      codes.write("patch", id, code, free, "%s was taken when it was merged".formatted(code));
    }
  }

  private boolean taken(String table, String name) {
    return database
        .first("SELECT 1 FROM main.%s WHERE name = ?".formatted(table), row -> true, name)
        .isPresent();
  }
}
