package charline.log;

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

  /** Changes to a patch and its readings, oldest first. */
  List<Change> of(UUID patch) {
    return store.query(
        """
        SELECT * FROM change
        WHERE row_id = ?1 OR row_id IN (SELECT id FROM reading WHERE patch_id = ?1)
        ORDER BY number
        """,
        row ->
            new Change(
                row.moment("changed_at"),
                row.optionalText("changed_by"),
                row.text("what"),
                row.optionalText("before"),
                row.optionalText("after"),
                row.optionalText("why")),
        patch);
  }
}
