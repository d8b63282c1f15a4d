package charline.log.merge;

import charline.log.Change;
import charline.log.History;
import charline.log.Joins;
import charline.log.Logbook;
import charline.log.database.Database;
import charline.log.database.SqlFailures;
import charline.refusal.Refusal;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.function.BooleanSupplier;

/**
 * Rows that two logs both hold. Where only one of them amended a row since they parted, the later
 * state holds. Where both did, a person has to say which holds; until then the row stays and is
 * named. What was decided is written into the history, so that it is not asked again, and so that
 * merging back brings it to the other log.
 */
final class MergeConflicts {
  /** Tables whose rows can be amended; boards and rigs before the patches that refer to them. */
  private static final List<String> TABLES =
      List.of(
          "own_wood",
          "own_family",
          "rig",
          "power_check",
          "upkeep",
          "board",
          "finish",
          "sample",
          "patch",
          "reading",
          "photo");

  private final Database database;
  private final OtherLog other;
  private final Logbook log;
  private final String name;
  private final Attribution attribution;
  private final ConflictText words;
  private final OtherCoats coats;
  private final List<Conflict> unresolved = new ArrayList<>();
  private int amended;
  private int voided;
  private int settled;

  MergeConflicts(Logbook log, OtherLog other, String name, Attribution attribution) {
    this.log = log;
    database = log.database();
    this.other = other;
    this.name = name;
    this.attribution = attribution;
    words = new ConflictText(database, other, name);
    coats = new OtherCoats(database, other, attribution, name);
  }

  /** Brings together what both logs hold. */
  void reconcile(Resolution take) {
    for (String table : TABLES) {
      other.different(table).forEach(id -> reconcile(table, id, take));
      other.copyNewsOfTheSame(table);
    }
    coats.different().forEach(finish -> reconcileCoats(finish, take));
  }

  private void reconcileCoats(UUID finish, Resolution take) {
    boolean there = other.hasNews(OtherCoats.CHANGES, finish);
    boolean here = other.missesNews(OtherCoats.CHANGES, finish);
    if (here && !there) {
      return; // the other log has not heard yet of what was amended here
    }
    if (there && !here) {
      coats.follow(finish);
      other.copyNews(OtherCoats.CHANGES, finish);
      amended++;
    } else if (there && take != Resolution.UNDECIDED) {
      other.copyNews(OtherCoats.CHANGES, finish);
      String why = (take == Resolution.THERE ? "as in " : "kept against ") + name;
      amending(
          why, take == Resolution.THERE ? () -> coats.take(finish, why) : () -> coats.keep(finish));
      settled++;
    } else {
      unresolved.add(words.ofCoats(finish));
    }
  }

  private void reconcile(String table, UUID id, Resolution take) {
    boolean there = other.hasNews(table, id);
    boolean here = other.missesNews(table, id);
    if (here && !there) {
      return; // the other log has not heard yet of what was amended here
    }
    boolean voids = table.equals("patch") && isVoidOnlyThere(id);
    if (there && !here && tried(table, id, () -> follow(table, id))) {
      amended++;
      voided += voids ? 1 : 0;
    } else if (take != Resolution.UNDECIDED && tried(table, id, () -> decide(table, id, take))) {
      settled++;
    } else {
      unresolved.add(words.of(table, id));
    }
  }

  private boolean isVoidOnlyThere(UUID patch) {
    return database
        .first(
            """
            SELECT 1 FROM main.patch m JOIN other.patch o ON o.id = m.id
            WHERE m.id = ? AND m.voided_why IS NULL AND o.voided_why IS NOT NULL
            """,
            row -> true,
            patch)
        .isPresent();
  }

  /**
   * Adds a reading that only the other log has.
   *
   * @return false if it does not fit the readings here, which is a conflict unless decided
   */
  boolean reading(UUID id, Resolution take) {
    if (tried("reading", id, () -> copied(id))) {
      return true;
    }
    boolean done =
        switch (take) {
          case UNDECIDED -> false;
          case THERE -> tried("reading", id, () -> struckHere(id) && copied(id));
          case HERE -> tried("reading", id, () -> copiedStruck(id));
        };
    if (done) {
      settled++;
      return take == Resolution.THERE;
    }
    unresolved.add(words.ofReading(id));
    return false;
  }

  int amended() {
    return amended;
  }

  /** Of those amended, the patches that became void. */
  int voided() {
    return voided;
  }

  int settled() {
    return settled;
  }

  List<Conflict> unresolved() {
    return unresolved;
  }

  /** Runs work that is undone again where the patch would not be a patch any more. */
  private boolean tried(String table, UUID id, BooleanSupplier work) {
    try {
      return database.inTransaction(
          () -> {
            boolean done = work.getAsBoolean();
            requireSoundPatch(table, id);
            return done;
          });
    } catch (Refusal e) {
      if (e.getCause() instanceof Refusal) {
        return false; // the readings cannot follow each other
      }
      if (e.getCause() instanceof SQLException failure && SqlFailures.breaksRule(failure)) {
        return false;
      }
      throw e;
    }
  }

  private void requireSoundPatch(String table, UUID id) {
    switch (table) {
      case "patch" -> log.patch(id);
      case "reading" -> log.patch(UUID.fromString(other.text("reading", "patch_id", id)));
      case "rig", "board", "finish" -> requireNoCircle(table, id);
      default -> {
        // Other rows have no rule that the schema does not know.
      }
    }
  }

  /** Each log may have joined one of two records into the other, and not the same one. */
  private void requireNoCircle(String table, UUID id) {
    if (new Joins(database).isCircle(Joins.Kind.valueOf(table.toUpperCase(Locale.ROOT)), id)) {
      Refusal circle = Refusal.data("Two records must not be joined into each other.");
      throw Refusal.data(circle.getMessage(), circle);
    }
  }

  /** The row as it is there, with the history that made it so. */
  private boolean follow(String table, UUID id) {
    // The change was written down there already; the trigger would write it a second time.
    other.past(table + "_changes_are_kept", () -> other.take(table, id));
    other.copyNews(table, id);
    return true;
  }

  private boolean decide(String table, UUID id, Resolution take) {
    other.copyNews(table, id);
    if (take == Resolution.THERE) {
      amending("as in " + name, () -> other.take(table, id));
    } else {
      keep(table, id);
    }
    return true;
  }

  /** Writes into the history that what is here holds against what is there. */
  private void keep(String table, UUID id) {
    for (String column : other.amendable(table)) {
      database
          .first(
              """
              SELECT o.%2$s AS there, m.%2$s AS here FROM main.%1$s m
              JOIN other.%1$s o ON o.id = m.id WHERE m.id = ? AND m.%2$s IS NOT o.%2$s
              """
                  .formatted(table, column),
              row ->
                  new Change(
                      attribution.at(),
                      attribution.by(),
                      table + "." + column,
                      row.optionalText("there"),
                      row.optionalText("here"),
                      Optional.of("kept against " + name)),
              id)
          .ifPresent(change -> attribution.write(database, change, id));
    }
  }

  private boolean copied(UUID reading) {
    other.copy("reading", reading);
    return true;
  }

  private boolean struckHere(UUID reading) {
    amending(
        "as in " + name,
        () ->
            database.update(
                """
                UPDATE main.reading SET voided_why = ?
                WHERE voided_why IS NULL AND (patch_id, passes) =
                  (SELECT patch_id, passes FROM other.reading WHERE id = ?)
                """,
                "as in " + name,
                reading));
    return true;
  }

  private boolean copiedStruck(UUID reading) {
    other.copy("reading", reading, "voided_why", "kept against " + name);
    keep("reading", reading);
    return true;
  }

  private void amending(String why, Runnable work) {
    new History(database).amending(attribution.at(), attribution.by().orElse(null), why, work);
  }
}
