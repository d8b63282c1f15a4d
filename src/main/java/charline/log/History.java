package charline.log;

import charline.log.database.Database;
import charline.log.database.ResultRow;
import charline.log.database.Timestamps;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Changes to records. The database's triggers write them; this adds who and why. */
public final class History {
  private final Database database;

  public History(Database database) {
    this.database = database;
  }

  /** Runs work that amends, in a transaction, under a name and a reason. */
  public void amending(OffsetDateTime now, String by, String why, Runnable work) {
    database.inTransaction(
        () -> {
          database.update(
              "INSERT INTO amending (only, at_utc, at_offset, person, reason) VALUES (1, ?, ?, ?,"
                  + " ?)",
              Timestamps.utc(now),
              Timestamps.offset(now),
              by,
              why);
          work.run();
          return database.update("DELETE FROM amending");
        });
  }

  /** Reads the moment of every change, the only value of one that may be unreadable. */
  void requireReadable() {
    database.query(
        "SELECT changed_at_utc, changed_at_offset FROM change", row -> row.moment("changed_at"));
  }

  /**
   * Changes to a patch and its readings, a rig with its power checks and upkeep, or a board or
   * finish, and to what was joined into it, oldest first. A moment that was changed comes with its
   * zone, in one change.
   */
  List<Change> of(UUID what) {
    return database.query(
        """
        WITH named AS (
          SELECT 'patch.rig_id' AS what, id, name FROM rig
          UNION ALL SELECT 'patch.board_id', id, name FROM board
          UNION ALL SELECT 'patch.finish_id', id, name FROM finish
          UNION ALL SELECT 'sample.finish_id', id, name FROM finish
          UNION ALL SELECT 'power_check.rig_id', id, name FROM rig
          UNION ALL SELECT 'upkeep.rig_id', id, name FROM rig
          UNION ALL SELECT 'rig.joined_into', id, name FROM rig
          UNION ALL SELECT 'board.joined_into', id, name FROM board
          UNION ALL SELECT 'finish.joined_into', id, name FROM finish),
        part AS (
          SELECT id, printf('power check of %s at %g %%',
            date(metered_at_utc, CASE metered_at_offset WHEN 'Z' THEN '+00:00' ELSE metered_at_offset END),
            setting_pct) AS called
          FROM power_check WHERE rig_id = ?1
          UNION ALL SELECT id, printf('upkeep of %s',
            date(done_at_utc, CASE done_at_offset WHEN 'Z' THEN '+00:00' ELSE done_at_offset END))
          FROM upkeep WHERE rig_id = ?1
          UNION ALL SELECT r.id, 'rig ' || r.name FROM rig r JOIN joined_rig j ON j.id = r.id
            WHERE j.target = ?1
          UNION ALL SELECT b.id, 'board ' || b.name FROM board b JOIN joined_board j ON j.id = b.id
            WHERE j.target = ?1
          UNION ALL SELECT f.id, 'finish ' || f.name FROM finish f
            JOIN joined_finish j ON j.id = f.id WHERE j.target = ?1)
        SELECT c.changed_at_utc, c.changed_at_offset, c.changed_by, c.what, c.why,
          coalesce(b.name, c.before) AS before, coalesce(a.name, c.after) AS after,
          coalesce(z.before, later.before, p.burned_at_offset, j.judged_at_offset,
            k.metered_at_offset, u.done_at_offset)
            AS before_offset,
          coalesce(z.after, later.before, p.burned_at_offset, j.judged_at_offset,
            k.metered_at_offset, u.done_at_offset)
            AS after_offset,
          coalesce(part.called, CASE WHEN c.what GLOB 'coat *'
            THEN substr(c.what, 1, instr(c.what, '.') - 1) END) AS part,
          r.*
        FROM change c
        LEFT JOIN change z ON c.what GLOB '*_at_utc' AND z.row_id = c.row_id
          AND z.what = replace(c.what, '_utc', '_offset')
          AND z.changed_at_utc = c.changed_at_utc AND z.why IS c.why
        LEFT JOIN change later ON z.number IS NULL AND c.what GLOB '*_at_utc'
          AND later.number = (SELECT min(l.number) FROM change l WHERE l.row_id = c.row_id
            AND l.what = replace(c.what, '_utc', '_offset') AND l.number > c.number)
        LEFT JOIN patch p ON c.what = 'patch.burned_at_utc' AND p.id = c.row_id
        LEFT JOIN reading j ON c.what = 'reading.judged_at_utc' AND j.id = c.row_id
        LEFT JOIN power_check k ON c.what = 'power_check.metered_at_utc' AND k.id = c.row_id
        LEFT JOIN upkeep u ON c.what = 'upkeep.done_at_utc' AND u.id = c.row_id
        LEFT JOIN part ON part.id = c.row_id
        LEFT JOIN reading r ON r.id = c.row_id AND c.what = 'reading.voided_why'
          AND (c.before IS NULL OR c.after IS NULL)
        LEFT JOIN named b ON b.what = c.what AND b.id = c.before
        LEFT JOIN named a ON a.what = c.what AND a.id = c.after
        WHERE (c.row_id = ?1 OR c.row_id IN (SELECT id FROM reading WHERE patch_id = ?1)
            OR c.row_id IN (SELECT id FROM part))
          AND NOT (c.what GLOB '*_at_offset' AND EXISTS (SELECT 1 FROM change u
            WHERE u.row_id = c.row_id AND u.what = replace(c.what, '_offset', '_utc')
              AND u.changed_at_utc = c.changed_at_utc AND u.why IS c.why))
        ORDER BY c.number
        """,
        History::change, what);
  }

  private static Change change(ResultRow row) throws SQLException {
    Change change =
        new Change(
            row.moment("changed_at"),
            row.optionalText("changed_by"),
            row.text("what"),
            time(row, "before"),
            time(row, "after"),
            row.optionalText("why"),
            row.optionalText("part"));
    return row.has("outcome") ? ReadingWords.ofWhole(change, ReadingTable.read(row)) : change;
  }

  /** A value, or a moment with the zone in which it was noted. */
  private static Optional<String> time(ResultRow row, String column) throws SQLException {
    Optional<String> value = row.optionalText(column);
    Optional<String> offset = row.optionalText(column + "_offset");
    return value.isPresent() && offset.isPresent()
        ? Optional.of(Timestamps.of(value.get(), offset.get()).toString())
        : value;
  }
}
