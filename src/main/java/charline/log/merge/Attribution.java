package charline.log.merge;

import charline.log.Change;
import charline.log.database.Database;
import charline.log.database.Timestamps;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.UUID;

/** Who decides, and when. */
public record Attribution(OffsetDateTime at, Optional<String> by) {
  /** Writes down a change that no trigger of the schema sees. */
  void write(Database database, Change change, UUID row) {
    database.update(
        """
        INSERT INTO main.change (changed_at_utc, changed_at_offset, changed_by, what, row_id,
          before, after, why)
        VALUES (?, ?, ?, ?, ?, ?, ?, ?)
        """,
        Timestamps.utc(change.at()),
        Timestamps.offset(change.at()),
        change.by(),
        change.what(),
        row,
        change.before(),
        change.after(),
        change.why());
  }
}
