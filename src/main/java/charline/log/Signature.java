package charline.log;

import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.UUID;

/** Who decides, and when. */
record Signature(OffsetDateTime at, Optional<String> by) {
  /** Writes down a change that no trigger of the schema sees. */
  void write(Store store, Change change, UUID row) {
    store.update(
        """
        INSERT INTO main.change (changed_at_utc, changed_at_offset, changed_by, what, row_id,
          before, after, why)
        VALUES (?, ?, ?, ?, ?, ?, ?, ?)
        """,
        Moments.utc(change.at()),
        Moments.offset(change.at()),
        change.by(),
        change.what(),
        row,
        change.before(),
        change.after(),
        change.why());
  }
}
