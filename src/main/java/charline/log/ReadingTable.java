package charline.log;

import charline.log.database.Database;
import charline.log.database.ResultRow;
import charline.log.database.RowValues;
import charline.trial.Outcome;
import charline.trial.Patch;
import charline.trial.Reading;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;

/** Readings of patches. */
final class ReadingTable {
  /** There are only eight, and a log has many readings. */
  private static final Map<String, Outcome> OUTCOMES = new ConcurrentHashMap<>();

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
    database.insert("reading", row(patch, reading));
  }

  void add(List<RowValues> rows) {
    database.insert("reading", rows);
  }

  /** All readings of some patches, as they are written. */
  static List<RowValues> rows(List<Patch> patches) {
    return patches.stream().flatMap(p -> p.readings().stream().map(r -> row(p.id(), r))).toList();
  }

  private static RowValues row(UUID patch, Reading reading) {
    return values(reading).put("id", reading.id()).put("patch_id", patch);
  }

  void amend(Reading reading) {
    database.amend("reading", reading.id(), values(reading));
  }

  private static RowValues values(Reading reading) {
    return new RowValues()
        .put("passes", reading.passes())
        .put("outcome", reading.outcome().text())
        .put("soot", reading.soot())
        .put("depth_um", reading.depthMicrometres())
        .moment("judged_at", reading.at())
        .put("judged_by", reading.by())
        .put("note", reading.note());
  }

  /** Takes a reading out of its patch; it stays in the log. */
  void strike(UUID reading, String why) {
    database.update("UPDATE reading SET voided_why = ? WHERE id = ?", why, reading);
  }
}
