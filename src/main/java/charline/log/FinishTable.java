package charline.log;

import charline.log.database.Database;
import charline.log.database.ResultRow;
import charline.log.database.Timestamps;
import charline.trial.Coat;
import charline.trial.Finish;
import charline.trial.Tone;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** Finishes and their coats. */
record FinishTable(Database database) {
  /** All finishes, by name. */
  List<Finish> all() {
    Map<UUID, List<Coat>> coats = new HashMap<>();
    database.query(
        "SELECT * FROM coat ORDER BY finish_id, position",
        row -> coats.computeIfAbsent(row.id("finish_id"), id -> new ArrayList<>()).add(coat(row)));
    return database.query(
        "SELECT * FROM finish ORDER BY name",
        row ->
            new Finish(
                row.id("id"),
                row.text("name"),
                row.text("family"),
                coats.getOrDefault(row.id("id"), List.of())));
  }

  private static Coat coat(ResultRow row) throws SQLException {
    return new Coat(
        row.text("family"),
        row.optionalText("tone").map(Tone::ofWord),
        row.optionalNumber("thickness_um"));
  }

  void add(Finish finish, OffsetDateTime now, String by) {
    database.update(
        """
        INSERT INTO finish (id, name, family, recorded_at_utc, recorded_at_offset, recorded_by)
        VALUES (?, ?, ?, ?, ?, ?)
        """,
        finish.id(),
        finish.name(),
        finish.family(),
        Timestamps.utc(now),
        Timestamps.offset(now),
        by);
    int position = 0;
    for (Coat coat : finish.coats()) {
      database.update(
          "INSERT INTO coat (finish_id, position, family, tone, thickness_um) VALUES (?, ?, ?, ?,"
              + " ?)",
          finish.id(),
          ++position,
          coat.family(),
          coat.tone().map(Tone::word),
          coat.thicknessMicrometres());
    }
  }
}
