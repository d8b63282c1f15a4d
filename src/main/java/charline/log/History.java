package charline.log;

import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;

/** Changes to what is recorded. The database's triggers write them; this names who and why. */
final class History {
  private final Store store;

  History(Store store) {
    this.store = store;
  }

  /** Runs work that amends, in a transaction, under a name and a reason. */
  void amending(OffsetDateTime now, String by, String why, Runnable work) {
    store.inTransaction(
        () -> {
          store.update(
              "INSERT INTO amending (only, at_utc, at_offset, person, reason) VALUES (1, ?, ?, ?, ?)",
              Moments.utc(now),
              Moments.offset(now),
              by,
              why);
          work.run();
          return store.update("DELETE FROM amending");
        });
  }

  /** Reads the moment of every change, the only value of one that may be unreadable. */
  void requireReadable() {
    store.query(
        "SELECT changed_at_utc, changed_at_offset FROM change", row -> row.moment("changed_at"));
  }

  /** Changes to a patch and its readings, oldest first. */
  List<Change> of(UUID patch) {
    return store.query(
        """
        WITH named AS (
          SELECT 'patch.rig_id' AS what, id, name FROM rig
          UNION ALL SELECT 'patch.board_id', id, name FROM board
          UNION ALL SELECT 'patch.finish_id', id, name FROM finish)
        SELECT c.changed_at_utc, c.changed_at_offset, c.changed_by, c.what, c.why,
          coalesce(b.name, c.before) AS before, coalesce(a.name, c.after) AS after, r.*
        FROM change c
        LEFT JOIN reading r ON r.id = c.row_id AND c.what = 'reading.voided_why'
          AND (c.before IS NULL OR c.after IS NULL)
        LEFT JOIN named b ON b.what = c.what AND b.id = c.before
        LEFT JOIN named a ON a.what = c.what AND a.id = c.after
        WHERE c.row_id = ?1 OR c.row_id IN (SELECT id FROM reading WHERE patch_id = ?1)
        ORDER BY c.number
        """,
        History::change,
        patch);
  }

  private static Change change(Row row) throws SQLException {
    Change change =
        new Change(
            row.moment("changed_at"),
            row.optionalText("changed_by"),
            row.text("what"),
            row.optionalText("before"),
            row.optionalText("after"),
            row.optionalText("why"));
    return row.has("outcome") ? ReadingWords.ofWhole(change, ReadingTable.read(row)) : change;
  }
}
