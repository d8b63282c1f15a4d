package charline.log;

import charline.log.database.Database;
import charline.log.database.ResultRow;
import charline.log.database.RowValues;
import charline.log.database.Timestamps;
import charline.log.database.Where;
import charline.trial.Board;
import charline.trial.Finish;
import charline.trial.Knob;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.trial.Rig;
import charline.trial.UsualValues;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Patches with their readings. Any number of them is read with five queries. */
public final class PatchTable {
  private static final String OWN_NUMBER = "CAST(substr(code, 3) AS INTEGER)";

  private static final String LAST =
      """
      p.recorded = (SELECT max(l.recorded) FROM patch l WHERE l.brought_in_by IS NULL
        AND (l.burned_by = ?1 COLLATE NOCASE OR l.recorded_by = ?1 COLLATE NOCASE) %s)
      """;

  private final Database database;
  private final RigTable rigs;
  private final BoardTable boards;
  private final FinishTable finishes;
  private final ReadingTable readings;

  PatchTable(
      Database database,
      RigTable rigs,
      BoardTable boards,
      FinishTable finishes,
      ReadingTable readings) {
    this.database = database;
    this.rigs = rigs;
    this.boards = boards;
    this.finishes = finishes;
    this.readings = readings;
  }

  /** Patches that meet a condition, oldest first. */
  List<PatchEntry> matching(Where where) {
    return read(
        where.condition(),
        "ORDER BY p.burned_at_utc, p.recorded",
        "SELECT r.* FROM patch p JOIN reading r ON r.patch_id = p.id WHERE r.voided_why IS NULL AND (%s) ORDER BY r.patch_id, r.passes"
            .formatted(where.condition()),
        where.values());
  }

  /** Patches that count nowhere, they or their boards being void, in the order of recording. */
  List<PatchEntry> voided() {
    String out =
        "(p.voided_why IS NOT NULL OR EXISTS (SELECT 1 FROM board v WHERE v.id = p.board_id AND"
            + " v.voided_why IS NOT NULL))";
    return read(
        out,
        "ORDER BY p.recorded",
        "SELECT r.* FROM patch p JOIN reading r ON r.patch_id = p.id WHERE r.voided_why IS NULL AND"
            + " "
            + out
            + " ORDER BY r.patch_id, r.passes");
  }

  /** The patch of that code, void or not. */
  Optional<PatchEntry> byCode(String code) {
    return one("p.code = ?1", code);
  }

  /** The patch of that identity, void or not. */
  Optional<PatchEntry> byId(UUID id) {
    return one("p.id = ?1", id);
  }

  /** The patch that a person burned or recorded last in this log, void ones left out. */
  Optional<PatchEntry> last(String person) {
    return one(LAST.formatted("AND l.voided_why IS NULL"), person);
  }

  /** Void or not. */
  Optional<PatchEntry> lastRecorded(String person) {
    return one(LAST.formatted(""), person);
  }

  /** Whether a patch was recorded at or after a moment. */
  boolean recordedSince(UUID patch, OffsetDateTime moment) {
    return database
        .first(
            "SELECT 1 FROM patch WHERE id = ? AND recorded_at_utc >= ?",
            row -> true,
            patch,
            Timestamps.bound(moment))
        .isPresent();
  }

  /** Figures of patches and rigs, a word each. */
  List<String> figures() {
    return database.query(
        "SELECT figure FROM patch WHERE figure IS NOT NULL UNION SELECT figure FROM rig WHERE"
            + " figure IS NOT NULL",
        row -> row.text("figure"));
  }

  Optional<OffsetDateTime> lastRecordedAt() {
    return database.first(
        "SELECT recorded_at_utc, recorded_at_offset FROM patch WHERE brought_in_by IS NOT 'merge'"
            + " ORDER BY recorded DESC LIMIT 1",
        row -> row.moment("recorded_at"));
  }

  boolean any() {
    return database.first("SELECT 1 FROM patch LIMIT 1", row -> true).isPresent();
  }

  private Optional<PatchEntry> one(String condition, Object value) {
    return read(
            condition,
            "",
            "SELECT r.* FROM reading r JOIN patch p ON p.id = r.patch_id WHERE r.voided_why IS NULL"
                + " AND "
                + condition
                + " ORDER BY r.passes",
            value)
        .stream()
        .findFirst();
  }

  /** What a rig had so far, the lowest and the highest of each knob, in patches that count. */
  UsualValues usual(Rig rig, UUID except) {
    Map<Knob, String> columns = new LinkedHashMap<>(SettingsColumns.columns());
    columns.put(Knob.PATCH_AREA, "patch_cm2");
    StringBuilder ends = new StringBuilder("count(*) AS patches");
    columns
        .values()
        .forEach(
            c -> ends.append(", min(%1$s) AS least_%1$s, max(%1$s) AS most_%1$s".formatted(c)));
    UsualValues usual = new UsualValues(rig);
    String counting =
        """
        FROM patch p WHERE p.rig_id = ? AND p.id <> ? AND p.voided_why IS NULL AND NOT EXISTS
          (SELECT 1 FROM board v WHERE v.id = p.board_id AND v.voided_why IS NOT NULL)
        """;
    database.query(
        "SELECT " + ends + " " + counting,
        row -> {
          usual.addPatches(row.whole("patches"));
          int half = (row.whole("patches") + 1) / 2;
          for (Map.Entry<Knob, String> column : columns.entrySet()) {
            for (String end : List.of("least_", "most_")) {
              row.optionalNumber(end + column.getValue())
                  .ifPresent(value -> usual.add(column.getKey(), value, half));
            }
          }
          return usual;
        },
        rig.id(),
        except);
    database
        .query(
            "SELECT max(passes) AS passes FROM reading WHERE voided_why IS NULL AND patch_id IN (SELECT p.id %s)"
                .formatted(counting),
            row -> row.optionalNumber("passes"),
            rig.id(),
            except)
        .forEach(most -> most.ifPresent(passes -> usual.add(Knob.PASSES, passes, 1)));
    return usual;
  }

  /** Every code that has been given out, void patches included. */
  List<String> codes() {
    return database.query("SELECT code FROM patch ORDER BY recorded", row -> row.text("code"));
  }

  /** Those of some codes that patches have, as they were recorded. */
  List<String> known(List<String> codes) {
    return database.query(
        "SELECT code FROM patch WHERE code IN " + Database.places(codes.size()),
        row -> row.text("code"),
        codes.toArray());
  }

  boolean has(String code) {
    return database.first("SELECT 1 FROM patch WHERE code = ?", row -> true, code).isPresent();
  }

  boolean hasOthersOn(UUID finish, String code) {
    return database
        .first(
            "SELECT 1 FROM patch WHERE finish_id = ? AND code <> ? AND voided_why IS NULL LIMIT 1",
            row -> true,
            finish,
            code)
        .isPresent();
  }

  /** The highest number of the log's own codes, 0 if there is none. */
  long highestNumber() {
    String sql =
        """
        SELECT %1$s AS number FROM patch
        WHERE code GLOB 'P-[0-9]*' AND NOT code GLOB 'P-*[^0-9]*' AND length(code) <= 11
          AND %1$s <= %2$d
        ORDER BY %1$s DESC LIMIT 1
        """
            .formatted(OWN_NUMBER, PatchCode.LAST_COUNTED);
    return database.first(sql, row -> (long) row.number("number")).orElse(0L);
  }

  private List<PatchEntry> read(
      String condition, String order, String readingSql, Object... values) {
    return database.inSnapshot(
        () -> {
          Map<UUID, Rig> rigsById = index(rigs.alsoJoined(), Rig::id);
          Map<UUID, Board> boardsById = index(boards.burned(condition, values), Board::id);
          Map<UUID, Finish> finishesById = index(finishes.alsoJoined(), Finish::id);
          Map<UUID, List<Reading>> readingsById = new HashMap<>();
          database.query(
              readingSql,
              row ->
                  readingsById
                      .computeIfAbsent(row.id("patch_id"), id -> new ArrayList<>())
                      .add(ReadingTable.read(row)),
              values);
          return database.query(
              "SELECT p.* FROM patch p WHERE %s %s".formatted(condition, order),
              row ->
                  entry(
                      row,
                      held(rigsById, row, "rig_id"),
                      held(boardsById, row, "board_id"),
                      held(finishesById, row, "finish_id"),
                      readingsById.getOrDefault(row.id("id"), List.of())),
              values);
        });
  }

  private static <T> T held(Map<UUID, T> byId, ResultRow row, String column) throws SQLException {
    T found = byId.get(row.id(column));
    if (found == null) {
      throw new NoSuchElementException(
          "the %s of %s is not in this log".formatted(column.replace("_id", ""), row.text("code")));
    }
    return found;
  }

  private static <T> Map<UUID, T> index(List<T> all, Function<T, UUID> id) {
    return all.stream().collect(Collectors.toMap(id, Function.identity()));
  }

  private static PatchEntry entry(
      ResultRow row, Rig rig, Board board, Finish finish, List<Reading> readings)
      throws SQLException {
    Patch patch =
        new Patch(
            row.id("id"),
            row.text("code"),
            row.moment("burned_at"),
            rig,
            board,
            finish,
            SettingsColumns.read(row),
            CircumstanceColumns.read(row, Knob.CIRCUMSTANCES),
            row.optionalNumber("patch_cm2"),
            readings);
    return new PatchEntry(
        patch,
        TypedText.ofJson(row.text("typed_json")),
        row.optionalText("burned_by"),
        row.optionalText("note"),
        row.optionalText("voided_why"));
  }

  /** Patches with their readings, as they are written. */
  record Rows(List<RowValues> patches, List<RowValues> readings) {}

  /**
   * Works out rows; asks nothing of the log.
   *
   * @param recorder who records them here; empty if they come from a trial sheet
   */
  static Rows rows(List<PatchEntry> entries, OffsetDateTime now, Optional<String> recorder) {
    return new Rows(
        entries.stream()
            .map(
                entry ->
                    values(entry)
                        .put("id", entry.patch().id())
                        .put("code", entry.patch().code())
                        .put("recorded_by", recorder)
                        .put("brought_in_by", recorder.isEmpty() ? "import" : null)
                        .moment("recorded_at", now))
            .toList(),
        ReadingTable.rows(entries.stream().map(PatchEntry::patch).toList()));
  }

  /** Records patches. */
  void add(Rows rows) {
    database.insert("patch", rows.patches());
    readings.add(rows.readings());
  }

  /** Writes the patch without its readings. */
  void amend(PatchEntry entry) {
    database.amend("patch", entry.patch().id(), values(entry));
  }

  private static RowValues values(PatchEntry entry) {
    Patch patch = entry.patch();
    RowValues values =
        new RowValues()
            .moment("burned_at", patch.burnedAt())
            .put("rig_id", patch.rig().id())
            .put("board_id", patch.board().id())
            .put("finish_id", patch.finish().id());
    SettingsColumns.put(values, patch.settings());
    return CircumstanceColumns.put(values, Knob.CIRCUMSTANCES, patch.circumstances())
        .put("patch_cm2", patch.areaSquareCentimetres())
        .put("typed_json", TypedText.json(entry.typed()))
        .put("burned_by", entry.by())
        .put("note", entry.note())
        .put("voided_why", entry.voided());
  }
}
