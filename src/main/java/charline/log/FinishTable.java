package charline.log;

import charline.log.database.Database;
import charline.log.database.ResultRow;
import charline.log.database.RowValues;
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
        row.optionalNumber("thickness_um"),
        row.optionalText("called"));
  }

  void add(Finish finish, OffsetDateTime now, String by) {
    database.insert(
        "finish",
        new RowValues()
            .put("id", finish.id())
            .put("name", finish.name())
            .put("family", finish.family())
            .moment("recorded_at", now)
            .put("recorded_by", by));
    int position = 0;
    for (Coat coat : finish.coats()) {
      database.insert(
          "coat",
          new RowValues()
              .put("finish_id", finish.id())
              .put("position", ++position)
              .put("family", coat.family())
              .put("tone", coat.tone().map(Tone::word))
              .put("thickness_um", coat.thicknessMicrometres())
              .put("called", coat.called()));
    }
  }
}
