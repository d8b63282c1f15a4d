package charline.log.merge;

import charline.log.Change;
import charline.log.database.Database;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * Coats of finishes that two logs both hold. A coat has no identity but its finish and its place in
 * the stack.
 */
final class OtherCoats {
  /** What the history calls changes to coats: "coat 2.tone". */
  static final String CHANGES = "coat [0-9]*";

  private static final String STACK =
      """
      (SELECT group_concat(c, '/') FROM (SELECT family || ':' || coalesce(tone, '') || ':'
          || coalesce(thickness_um, '') || coalesce(':' || called, '') AS c
        FROM %s.coat WHERE finish_id = f.id AND voided_why IS NULL ORDER BY position))
      """;

  private final Database database;
  private final OtherLog other;
  private final Attribution attribution;
  private final String name;

  OtherCoats(Database database, OtherLog other, Attribution attribution, String name) {
    this.database = database;
    this.other = other;
    this.attribution = attribution;
    this.name = name;
  }

  /** Finishes of both logs that differ in their coats. */
  List<UUID> different() {
    return database.query(
        """
        SELECT f.id FROM main.finish f JOIN other.finish o ON o.id = f.id
        WHERE %s IS NOT %s ORDER BY f.rowid
        """
            .formatted(STACK.formatted("main"), STACK.formatted("other")),
        row -> row.id("id"));
  }

  /** Brings the coats in as they are there; the changes were written down there already. */
  void follow(UUID finish) {
    other.past("coat_changes_are_kept", () -> take(finish, "as in " + name));
  }

  /** Makes the coats what they are there; those that only this log has are struck. */
  void take(UUID finish, String why) {
    database.update(
        """
        UPDATE main.coat SET (family, tone, thickness_um, called, voided_why) =
          (SELECT o.family, o.tone, o.thickness_um, o.called, o.voided_why FROM other.coat o
           WHERE o.finish_id = coat.finish_id AND o.position = coat.position)
        WHERE finish_id = ?1
          AND position IN (SELECT position FROM other.coat WHERE finish_id = ?1)
        """,
        finish);
    database.update(
        """
        UPDATE main.coat SET voided_why = ?2 WHERE finish_id = ?1 AND voided_why IS NULL
          AND position NOT IN (SELECT position FROM other.coat WHERE finish_id = ?1)
        """,
        finish,
        why);
    database.update(
        """
        INSERT INTO main.coat (finish_id, position, family, tone, thickness_um, called, voided_why)
        SELECT finish_id, position, family, tone, thickness_um, called, voided_why FROM other.coat
        WHERE finish_id = ?1
          AND position NOT IN (SELECT position FROM main.coat WHERE finish_id = ?1)
        """,
        finish);
  }

  /** Writes into the history that the coats here hold against those there. */
  void keep(UUID finish) {
    attribution.write(
        database,
        new Change(
            attribution.at(),
            attribution.by(),
            "coat 1.stack",
            Optional.of(stack("other", finish)),
            Optional.of(stack("main", finish)),
            Optional.of("kept against " + name)),
        finish);
  }

  private String stack(String log, UUID finish) {
    return database
        .first(
            "SELECT coalesce(%s, '') AS stack FROM main.finish f WHERE f.id = ?"
                .formatted(STACK.formatted(log)),
            row -> row.text("stack"),
            finish)
        .orElseThrow();
  }
}
