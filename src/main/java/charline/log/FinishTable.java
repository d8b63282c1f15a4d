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
import java.util.Optional;
import java.util.UUID;

/** Finishes and their coats. */
record FinishTable(Database database) {
  /** All finishes, by name. */
  List<Finish> all() {
    return read("joined_into IS NULL");
  }

  /** The same with those that were joined into others. */
  List<Finish> alsoJoined() {
    return read("1 = 1");
  }

  private List<Finish> read(String condition) {
    Map<UUID, List<Coat>> coats = new HashMap<>();
    database.query(
        "SELECT * FROM coat WHERE voided_why IS NULL ORDER BY finish_id, position",
        row -> coats.computeIfAbsent(row.id("finish_id"), id -> new ArrayList<>()).add(coat(row)));
    return database.query(
        "SELECT * FROM finish WHERE %s ORDER BY name".formatted(condition),
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
      addCoat(finish.id(), ++position, coat);
    }
  }

  private void addCoat(UUID finish, int position, Coat coat) {
    database.insert(
        "coat",
        new RowValues()
            .put("finish_id", finish)
            .put("position", position)
            .put("family", coat.family())
            .put("tone", coat.tone().map(Tone::word))
            .put("thickness_um", coat.thicknessMicrometres())
            .put("called", coat.called()));
  }

  /**
   * Writes name, family and coats; coats too many are struck. Gives how many finishes that were.
   */
  int amend(Finish finish, Optional<String> why) {
    int known =
        database
            .first(
                "SELECT count(*) AS coats FROM coat WHERE finish_id = ?",
                row -> row.whole("coats"),
                finish.id())
            .orElseThrow();
    for (int i = 0; i < Math.max(known, finish.coats().size()); i++) {
      if (i >= finish.coats().size()) {
        database.update(
            "UPDATE coat SET voided_why = ? WHERE finish_id = ? AND position = ? AND voided_why IS NULL",
            why.orElse("struck when the coats were amended"),
            finish.id(),
            i + 1);
      } else if (i >= known) {
        addCoat(finish.id(), i + 1, finish.coats().get(i));
      } else {
        Coat coat = finish.coats().get(i);
        database.update(
            """
            UPDATE coat SET family = ?, tone = ?, thickness_um = ?, called = ?, voided_why = NULL
            WHERE finish_id = ? AND position = ?
            """,
            coat.family(),
            coat.tone().map(Tone::word),
            coat.thicknessMicrometres(),
            coat.called(),
            finish.id(),
            i + 1);
      }
    }
    return database.amend(
        "finish",
        finish.id(),
        new RowValues().put("name", finish.name()).put("family", finish.family()));
  }
}
