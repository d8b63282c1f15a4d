package charline.log;

import charline.log.database.Database;
import charline.log.database.ResultRow;
import charline.log.database.Timestamps;
import charline.trial.Outcome;
import charline.trial.Reading;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;

/** Readings of patches. */
final class ReadingTable {
  /** There are only eight, and a log has many readings. */
  private static final Map<String, Outcome> OUTCOMES = new ConcurrentHashMap<>();

  /** Few different statements, each kept ready; far below the 32,766 values of one. */
  private static final int AT_ONCE = 20;

  private final Database database;

  ReadingTable(Database database) {
    this.database = database;
  }

  static Reading read(ResultRow row) throws SQLException {
    return new Reading(
        row.id("id"),
        row.whole("passes"),
        OUTCOMES.computeIfAbsent(row.text("outcome"), Outcome::parse),
        row.optionalFlag("soot"),
        row.optionalNumber("depth_um"),
        row.moment("judged_at"),
        row.optionalText("judged_by"),
        row.optionalText("note"));
  }

  void add(UUID patch, Reading reading) {
    add(patch, List.of(reading));
  }

  /** Several in one statement, as a trial sheet has very many. */
  void add(UUID patch, List<Reading> readings) {
    for (int from = 0; from < readings.size(); from += AT_ONCE) {
      addAtOnce(patch, readings.subList(from, Math.min(from + AT_ONCE, readings.size())));
    }
  }

  private void addAtOnce(UUID patch, List<Reading> readings) {
    List<Object> values = new ArrayList<>();
    for (Reading reading : readings) {
      values.add(reading.id());
      values.add(patch);
      values.add(reading.passes());
      values.add(reading.outcome().text());
      values.add(reading.soot());
      values.add(reading.depthMicrometres());
      values.add(Timestamps.utc(reading.at()));
      values.add(Timestamps.offset(reading.at()));
      values.add(reading.by());
      values.add(reading.note());
    }
    database.update(
        """
        INSERT INTO reading (id, patch_id, passes, outcome, soot, depth_um, judged_at_utc,
          judged_at_offset, judged_by, note)
        VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
        """
            + ", (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)".repeat(readings.size() - 1),
        values.toArray());
  }

  void amend(Reading reading) {
    database.update(
        """
        UPDATE reading SET passes = ?, outcome = ?, soot = ?, depth_um = ?, judged_at_utc = ?,
          judged_at_offset = ?, judged_by = ?, note = ?
        WHERE id = ?
        """,
        reading.passes(),
        reading.outcome().text(),
        reading.soot(),
        reading.depthMicrometres(),
        Timestamps.utc(reading.at()),
        Timestamps.offset(reading.at()),
        reading.by(),
        reading.note(),
        reading.id());
  }

  /** Takes a reading out of its patch; it stays in the log. */
  void strike(UUID reading, String why) {
    database.update("UPDATE reading SET voided_why = ? WHERE id = ?", why, reading);
  }
}
