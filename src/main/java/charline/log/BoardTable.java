package charline.log;

import charline.log.database.Database;
import charline.log.database.ResultRow;
import charline.log.database.RowValues;
import charline.trial.Board;
import charline.trial.WoodForm;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Boards. */
record BoardTable(Database database) {
  /** All boards that count, by name. */
  List<Board> all() {
    return database.query(
        "SELECT * FROM board WHERE joined_into IS NULL AND voided_why IS NULL ORDER BY name",
        BoardTable::read);
  }

  /** The same with void ones. */
  List<Board> alsoVoid() {
    return database.query(
        "SELECT * FROM board WHERE joined_into IS NULL ORDER BY name", BoardTable::read);
  }

  /** Those that are void, by name. */
  List<Board> voidOnes() {
    return database.query(
        "SELECT * FROM board WHERE joined_into IS NULL AND voided_why IS NOT NULL ORDER BY name",
        BoardTable::read);
  }

  /** Why a board is void, if it is. */
  Optional<String> voided(UUID id) {
    return database.first(
        "SELECT voided_why FROM board WHERE id = ? AND voided_why IS NOT NULL",
        row -> row.text("voided_why"),
        id);
  }

  /** Whether one of some boards is void. */
  boolean hasVoid(List<UUID> ids) {
    return database
        .first(
            "SELECT 1 FROM board WHERE id IN %s AND voided_why IS NOT NULL"
                .formatted(Database.places(ids.size())),
            row -> true,
            ids.toArray())
        .isPresent();
  }

  /** Takes a board out for a reason, or lets it count again where there is none. */
  void setVoid(UUID id, String why) {
    database.update("UPDATE board SET voided_why = ? WHERE id = ?", why, id);
  }

  /** The boards that patches which meet a condition were burned on. */
  List<Board> burned(String condition, Object... values) {
    return database.query(
        "SELECT * FROM board WHERE id IN (SELECT p.board_id FROM patch p WHERE %s)"
            .formatted(condition),
        BoardTable::read,
        values);
  }

  Optional<Board> byId(UUID id) {
    return database.first("SELECT * FROM board WHERE id = ?", BoardTable::read, id);
  }

  /** The board of that name, capitals of other alphabets than English apart. */
  Optional<Board> byName(String name) {
    return database.first(
        "SELECT * FROM board WHERE name = ? AND joined_into IS NULL", BoardTable::read, name);
  }

  private static Board read(ResultRow row) throws SQLException {
    return new Board(
        row.id("id"),
        row.text("name"),
        row.text("wood"),
        WoodForm.ofWord(row.text("form")),
        row.optionalText("condition"),
        row.optionalNumber("moisture_pct"),
        row.optionalText("job"));
  }

  void add(Board board, OffsetDateTime now, String by) {
    database.insert(
        "board",
        values(board).put("id", board.id()).moment("recorded_at", now).put("recorded_by", by));
  }

  int amend(Board board) {
    return database.amend("board", board.id(), values(board));
  }

  private static RowValues values(Board board) {
    return new RowValues()
        .put("name", board.name())
        .put("wood", board.wood())
        .put("form", board.form().word())
        .put("condition", board.condition())
        .put("moisture_pct", board.moisturePercent())
        .put("job", board.job());
  }
}
