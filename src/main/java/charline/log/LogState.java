package charline.log;

import charline.log.database.Database;
import java.util.UUID;

/** What the log shows of entries and changes without their content. */
final class LogState {
  private LogState() {}

  /** True if a patch, reading or photo of that identity was ever recorded. */
  static boolean knows(Database database, UUID id) {
    return database
        .first(
            """
            SELECT 1 FROM patch WHERE id = ?1
            UNION ALL SELECT 1 FROM reading WHERE id = ?1
            UNION ALL SELECT 1 FROM photo WHERE id = ?1
            """,
            row -> true,
            id)
        .isPresent();
  }

  /** Changes with every write: data_version counts those of others, total_changes our own. */
  static String token(Database database) {
    return database
        .first(
            "SELECT total_changes() AS ours, v.data_version AS theirs FROM pragma_data_version v",
            row -> row.whole("theirs") + "/" + row.whole("ours"))
        .orElseThrow();
  }
}
