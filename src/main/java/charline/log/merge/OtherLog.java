package charline.log.merge;

import charline.log.database.Database;
import java.util.List;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** The rows of a log that is attached under the name {@code other}. */
record OtherLog(Database database) {
  /** The other log's changes to one row that this log has not heard of. */
  private static final String NEWS =
      """
      FROM %1$s.change o
      WHERE o.row_id = ?1 AND o.what GLOB ?2 || '.*' AND o.what NOT GLOB '*.code'
        AND o.what NOT GLOB '*.name'
        AND NOT EXISTS (SELECT 1 FROM %2$s.change m
          WHERE m.row_id = o.row_id AND m.what = o.what AND m.changed_at_utc = o.changed_at_utc
            AND m.before IS o.before AND m.after IS o.after AND m.why IS o.why
            AND m.changed_by IS o.changed_by)
      """;

  /** One log's changes to the name of ?1 that the other has not heard of. */
  private static final String NAMES =
      """
      FROM %1$s.change o WHERE o.row_id = ?1 AND o.what = ?2
        AND NOT EXISTS (SELECT 1 FROM %2$s.change m
          WHERE m.row_id = o.row_id AND m.what = o.what AND m.changed_at_utc = o.changed_at_utc
            AND m.before IS o.before AND m.after IS o.after)
      """;

  private static final String CHANGE =
      "changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why";

  /** Identities that only the other log has, in the order of their recording. */
  List<UUID> newcomers(String table) {
    return database.query(
        "SELECT id FROM other.%1$s WHERE id NOT IN (SELECT id FROM main.%1$s) ORDER BY rowid"
            .formatted(table),
        row -> row.id("id"));
  }

  /**
   * Codes of patches that each log has by itself and that are one patch to all appearance: of one
   * code, time, board, setting and first reading. Void ones, which count nowhere, are none; nor are
   * those that one of the logs holds both of, as somebody has looked at them before.
   */
  List<String> twins() {
    return database.query(
        """
        SELECT o.code FROM other.patch o
        JOIN main.patch m ON m.code = o.code AND m.burned_at_utc = o.burned_at_utc
          AND m.power_pct IS o.power_pct AND m.power_w IS o.power_w
          AND m.hand_speed_mm_s IS o.hand_speed_mm_s AND m.scan_width_mm IS o.scan_width_mm
          AND m.spot_speed_mm_s IS o.spot_speed_mm_s AND m.line_spacing_mm IS o.line_spacing_mm
          AND m.seconds_per_pass IS o.seconds_per_pass AND m.timed_area_cm2 IS o.timed_area_cm2
        JOIN other.board ob ON ob.id = o.board_id
        JOIN main.board mb ON mb.id = m.board_id AND mb.name = ob.name
        WHERE m.voided_why IS NULL AND o.voided_why IS NULL
          AND o.id NOT IN (SELECT id FROM main.patch) AND m.id NOT IN (SELECT id FROM other.patch)
          AND (SELECT passes || outcome FROM main.reading
               WHERE patch_id = m.id AND voided_why IS NULL ORDER BY passes LIMIT 1)
            = (SELECT passes || outcome FROM other.reading
               WHERE patch_id = o.id AND voided_why IS NULL ORDER BY passes LIMIT 1)
        ORDER BY o.rowid
        """,
        row -> row.text("code"));
  }

  /** Identities of rows that both logs hold and that differ in what may be amended. */
  List<UUID> different(String table) {
    String differ = difference(table);
    return database.query(
        "SELECT m.id FROM main.%1$s m JOIN other.%1$s o ON o.id = m.id WHERE %2$s ORDER BY m.rowid"
            .formatted(table, differ),
        row -> row.id("id"));
  }

  private String difference(String table) {
    return amendable(table).stream()
        .map("m.%1$s IS NOT o.%1$s"::formatted)
        .collect(Collectors.joining(" OR "));
  }

  /**
   * Brings the history of rows in that are the same in both logs: what was decided there for the
   * values here is known here then, and not taken for a rival later.
   */
  void copyNewsOfTheSame(String table) {
    database
        .query(
            """
            SELECT DISTINCT m.id FROM other.change c
            JOIN main.%1$s m ON m.id = c.row_id JOIN other.%1$s o ON o.id = m.id
            WHERE NOT (%2$s)
            """
                .formatted(table, difference(table)),
            row -> row.id("id"))
        .forEach(id -> copyNews(table, id));
  }

  /** Whether the other log amended a row in a way that this log has not heard of. */
  boolean hasNews(String table, UUID id) {
    return database
        .first("SELECT 1 " + NEWS.formatted("other", "main"), r -> true, id, table)
        .isPresent();
  }

  /** Whether this log amended a row in a way that the other has not heard of. */
  boolean missesNews(String table, UUID id) {
    return database
        .first("SELECT 1 " + NEWS.formatted("main", "other"), r -> true, id, table)
        .isPresent();
  }

  /** Brings the history of a row in, as it was written there. */
  void copyNews(String table, UUID id) {
    database.update(
        "INSERT INTO main.change (%1$s) SELECT %1$s %2$s ORDER BY o.number"
            .formatted(CHANGE, NEWS.formatted("other", "main")),
        id,
        table);
  }

  /** Identities of rows of both logs that have another name there. */
  List<UUID> renamed(String table) {
    return database.query(
        "SELECT m.id FROM main.%1$s m JOIN other.%1$s o ON o.id = m.id WHERE m.name <> o.name COLLATE BINARY ORDER BY m.rowid"
            .formatted(table),
        row -> row.id("id"));
  }

  /**
   * Whether somebody renamed a row there, which this log has not heard of. A name that gave way in
   * a merge is no news.
   */
  boolean hasNewName(String table, UUID id) {
    return named("other", "main", table, id);
  }

  /** Whether somebody renamed a row here, which the other log has not heard of. */
  boolean missesNewName(String table, UUID id) {
    return named("main", "other", table, id);
  }

  private boolean named(String log, String than, String table, UUID id) {
    return database
        .first("SELECT 1 " + NAMES.formatted(log, than), row -> true, id, table + ".name")
        .isPresent();
  }

  void copyNewName(String table, UUID id) {
    database.update(
        "INSERT INTO main.change (%1$s) SELECT %1$s %2$s ORDER BY o.number"
            .formatted(CHANGE, NAMES.formatted("other", "main")),
        id,
        table + ".name");
  }

  /** Makes a row what it is there; the triggers of the schema write that down. */
  void take(String table, UUID id) {
    String columns = String.join(", ", amendable(table));
    database.update(
        "UPDATE main.%1$s SET (%2$s) = (SELECT %2$s FROM other.%1$s WHERE id = ?1) WHERE id = ?1"
            .formatted(table, columns),
        id);
  }

  /** Does what a trigger of this log would hinder; to be called in a transaction. */
  void past(String trigger, Runnable work) {
    String sql =
        database
            .first(
                "SELECT sql FROM main.sqlite_schema WHERE type = 'trigger' AND name = ?",
                row -> row.text("sql"),
                trigger)
            .orElseThrow();
    database.update("DROP TRIGGER main." + trigger);
    work.run();
    database.update(sql);
  }

  String text(String table, String column, UUID id) {
    return database
        .first(
            "SELECT %s AS value FROM other.%s WHERE id = ?".formatted(column, table),
            row -> row.text("value"),
            id)
        .orElseThrow();
  }

  /** Copies what is known of a word that is no word here. */
  void copyFacts(String table, String name) {
    String columns = String.join(", ", columns(table, c -> true));
    database.update(
        "INSERT INTO main.%1$s (%2$s) SELECT %2$s FROM other.%1$s WHERE name = ?"
            .formatted(table, columns),
        name);
  }

  void copy(String table, UUID id) {
    copy(table, id, "id", id.toString());
  }

  /** Copies a row and its history, one column taking a value of ours. */
  void copy(String table, UUID id, String column, String value) {
    List<String> columns = columns(table, c -> !c.equals("recorded")); // the order is our own
    String values =
        columns.stream()
            .map(c -> c.equals(column) ? "?" : c.equals("brought_in_by") ? "'merge'" : c)
            .collect(Collectors.joining(", "));
    database.update(
        "INSERT INTO main.%s (%s) SELECT %s FROM other.%s WHERE id = ?"
            .formatted(table, String.join(", ", columns), values, table),
        value,
        id);
    database.update(
        "INSERT INTO main.change (%1$s) SELECT %1$s FROM other.change WHERE row_id = ? ORDER BY number"
            .formatted(CHANGE),
        id);
  }

  /** Columns that a person may amend. Names and codes differ because an earlier merge made them. */
  List<String> amendable(String table) {
    List<String> fixed =
        List.of(
            "id",
            "patch_id",
            "recorded",
            "code",
            "name",
            "content",
            "sha256",
            "recorded_by",
            "brought_in_by");
    return columns(table, c -> !fixed.contains(c) && !c.startsWith("recorded_at"));
  }

  private List<String> columns(String table, Predicate<String> wanted) {
    return database
        .query("SELECT name FROM pragma_table_info(?)", row -> row.text("name"), table)
        .stream()
        .filter(wanted)
        .toList();
  }
}
