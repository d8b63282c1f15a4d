package charline.log;

import static charline.log.Boathouse.CLOCK;
import static charline.log.Boathouse.MORNING;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import charline.exposure.HandPass;
import charline.exposure.PowerSetting;
import charline.log.database.Database;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Patch;
import charline.trial.PowerCheck;
import charline.trial.Reading;
import charline.trial.Rig;
import charline.trial.RigBuilder;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class HistoryTest {
  @TempDir Path folder;
  Path file;
  Logbook log;
  Boathouse boathouse;

  @BeforeEach
  void open() {
    file = folder.resolve("boathouse.db");
    log = EmptyLog.open(file, CLOCK);
    boathouse = new Boathouse(log);
  }

  @AfterEach
  void close() {
    log.close();
  }

  private void raw(String sql) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA foreign_keys = ON");
      statement.execute(sql);
    }
  }

  private static PatchEntry with(PatchEntry entry, PowerSetting power, List<Reading> readings) {
    Patch p = entry.patch();
    return new PatchEntry(
        new Patch(
            p.id(),
            p.code(),
            p.burnedAt(),
            p.rig(),
            p.board(),
            p.finish(),
            p.settings().withPower(power),
            p.areaSquareCentimetres(),
            readings),
        Map.of("power", "70%"),
        entry.by(),
        entry.note(),
        entry.voided());
  }

  private static Reading after(Reading r, int passes) {
    return new Reading(
        r.id(), passes, r.outcome(), r.soot(), r.depthMicrometres(), r.at(), r.by(), r.note());
  }

  @Test
  void an_amendment_writes_only_what_differs_with_who_when_and_why() {
    PatchEntry entry = boathouse.burn("tint");
    PatchEntry amended =
        with(entry, PowerSetting.percent(70), List.of(after(entry.patch().lastReading(), 2)));
    log.amend(amended, "Bo", "misread the dial");
    assertThat(log.patch("P-0001")).isEqualTo(amended);
    Optional<String> bo = Optional.of("Bo");
    Optional<String> why = Optional.of("misread the dial");
    assertThat(log.history("P-0001"))
        .containsExactly(
            new Change(
                MORNING, bo, "patch.power_pct", Optional.of("60.0"), Optional.of("70.0"), why),
            new Change(
                MORNING,
                bo,
                "patch.typed_json",
                Optional.of("{\"power\":\"60%\"}"),
                Optional.of("{\"power\":\"70%\"}"),
                why),
            new Change(MORNING, bo, "reading.passes", Optional.of("1"), Optional.of("2"), why));
    assertThat(log.history("P-0001"))
        .filteredOn(change -> !change.isEcho())
        .extracting(Change::words)
        .containsExactly("power from 60 % to 70 %", "passes from 1 to 2");
    log.amend(amended, "Bo", "once more");
    assertThat(log.history("P-0001")).hasSize(3);
  }

  @Test
  void a_change_of_board_is_told_by_the_boards_names() {
    Board other =
        new Board(
            log.newId(),
            "sill",
            "pine",
            boathouse.board.form(),
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty());
    log.add(other, "Ada");
    PatchEntry entry = boathouse.burn("tint");
    Patch p = entry.patch();
    log.amend(
        new PatchEntry(
            new Patch(
                p.id(),
                p.code(),
                p.burnedAt(),
                p.rig(),
                other,
                p.finish(),
                p.settings(),
                p.areaSquareCentimetres(),
                p.readings()),
            entry.typed(),
            entry.by(),
            entry.note(),
            entry.voided()),
        "Bo",
        "wrong offcut");
    assertThat(log.history("P-0001"))
        .extracting(Change::words)
        .containsExactly("board from door stile to sill");
  }

  @Test
  void an_amendment_can_change_power_from_percent_to_watts() {
    PatchEntry entry = boathouse.burn("tint");
    log.amend(with(entry, PowerSetting.watts(110), entry.patch().readings()), null, "meter was on");
    assertThat(log.patch("P-0001").patch().settings().power()).isEqualTo(PowerSetting.watts(110));
    assertThat(log.history("P-0001"))
        .extracting(Change::what, Change::before, Change::after)
        .contains(
            tuple("patch.power_pct", Optional.of("60.0"), Optional.empty()),
            tuple("patch.power_w", Optional.empty(), Optional.of("110.0")));
  }

  @Test
  void readings_can_shift_be_added_and_be_struck() {
    boathouse.burn("residue");
    log.addReading("P-0001", boathouse.reading(2, "tint"));
    log.addReading("P-0001", boathouse.reading(3, "clean"));
    PatchEntry entry = log.patch("P-0001");
    List<Reading> old = entry.patch().readings();
    List<Reading> wanted =
        List.of(after(old.get(0), 2), after(old.get(1), 3), boathouse.reading(5, "char"));
    log.amend(
        with(entry, PowerSetting.percent(60), wanted), "Ada", "counted from one, not from zero");
    assertThat(log.patch("P-0001").patch().readings()).isEqualTo(wanted);
    assertThat(log.history("P-0001"))
        .filteredOn(c -> c.what().equals("reading"))
        .extracting(Change::words, Change::why)
        .containsExactly(
            tuple(
                "reading struck: clean after 3 passes",
                Optional.of("counted from one, not from zero")));
    List<Reading> back = List.of(after(wanted.get(0), 1), after(wanted.get(1), 2));
    log.amend(with(entry, PowerSetting.percent(60), back), "Ada", "it was right before");
    assertThat(log.patch("P-0001").patch().readings()).isEqualTo(back);
  }

  @Test
  void identity_and_code_cannot_be_amended() {
    PatchEntry entry = boathouse.burn("clean");
    Patch other = boathouse.patch("P-0001", MORNING, boathouse.reading(1, "clean"));
    assertThatThrownBy(() -> log.amend(Boathouse.entry(other), "Ada", "try"))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("P-0001 is not in this log under that identity");
    Patch p = entry.patch();
    Patch renamed =
        new Patch(
            p.id(),
            "P-0009",
            p.burnedAt(),
            p.rig(),
            p.board(),
            p.finish(),
            p.settings(),
            p.areaSquareCentimetres(),
            p.readings());
    assertThatThrownBy(() -> log.amend(Boathouse.entry(renamed), "Ada", "try"))
        .isInstanceOf(Refusal.class)
        .hasMessageStartingWith("The code on the masking tape cannot be amended: P-0001");
    assertThatThrownBy(() -> log.amend(entry, "Ada", " "))
        .isInstanceOf(Refusal.class)
        .hasMessageStartingWith("A change to a record needs a reason");
  }

  @Test
  void a_void_patch_vanishes_from_analysis_and_stays_in_the_log() {
    boathouse.burn("clean");
    boathouse.burn("char");
    log.voidPatch("P-0002", "Bo", "head touched the board");
    assertThat(log.patches(Filter.ALL)).extracting(e -> e.patch().code()).containsExactly("P-0001");
    assertThat(log.lastPatch("Ada").orElseThrow().patch().code()).isEqualTo("P-0001");
    assertThat(log.patch("P-0002").voided()).contains("head touched the board");
    assertThat(log.history("P-0002"))
        .containsExactly(
            new Change(
                MORNING,
                Optional.of("Bo"),
                "patch.voided_why",
                Optional.empty(),
                Optional.of("head touched the board"),
                Optional.of("head touched the board")));
    assertThatThrownBy(() -> log.voidPatch("P-0002", "Bo", "again"))
        .hasMessage("P-0002 is void already (head touched the board); nothing was changed.");
    assertThatThrownBy(() -> log.addReading("P-0002", boathouse.reading(2, "char")))
        .hasMessageStartingWith("P-0002 is void (head touched the board)");
  }

  @Test
  void a_void_patch_can_be_brought_back() {
    PatchEntry entry = boathouse.burn("clean");
    log.voidPatch("P-0001", "Bo", "wrong patch");
    log.amend(entry, "Bo", "it was P-0002 that went wrong");
    assertThat(log.patches(Filter.ALL)).containsExactly(entry);
    assertThat(log.history("P-0001")).hasSize(2);
  }

  @Test
  void raw_sql_leaves_its_trace_too() throws SQLException {
    boathouse.burn("char");
    raw("UPDATE reading SET outcome = 'clean'");
    assertThat(log.history("P-0001"))
        .singleElement()
        .satisfies(
            c -> {
              assertThat(c.what()).isEqualTo("reading.outcome");
              assertThat(c.before()).contains("char");
              assertThat(c.after()).contains("clean");
              assertThat(c.by()).isEmpty();
              assertThat(c.why()).isEmpty();
            });
  }

  private void burnedAt(String moment) {
    PatchEntry e = log.patch("P-0001");
    Patch p = e.patch();
    log.amend(
        new PatchEntry(
            new Patch(
                p.id(),
                p.code(),
                OffsetDateTime.parse(moment),
                p.rig(),
                p.board(),
                p.finish(),
                p.settings(),
                p.areaSquareCentimetres(),
                p.readings()),
            e.typed(),
            e.by(),
            e.note(),
            e.voided()),
        "Ada",
        "at " + moment);
  }

  /** Just after midnight in the boathouse it is the day before in UTC. */
  @Test
  void a_time_that_was_amended_is_told_in_the_zone_in_which_it_was_noted() {
    boathouse.burn("char");
    burnedAt("2026-03-09T00:30:00+01:00");
    burnedAt("2026-03-08T16:00:00-05:00");
    burnedAt("2026-03-08T17:00:00-05:00");
    assertThat(log.history("P-0001"))
        .extracting(Change::words)
        .containsExactly(
            "time of burning from 2026-03-10 09:30 to 2026-03-09 00:30",
            "time of burning from 2026-03-09 00:30 to 2026-03-08 16:00",
            "time of burning from 2026-03-08 16:00 to 2026-03-08 17:00");
    assertThat(log.history("P-0001").get(1).after()).contains("2026-03-08T16:00-05:00");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "UPDATE patch SET burned_at_offset = '+99:99'",
        "UPDATE reading SET judged_at_offset = 'here'",
        "UPDATE reading SET passes = 9000000000",
        "UPDATE patch SET hand_speed_mm_s = 9e999",
        "INSERT INTO change (changed_at_utc, changed_at_offset, what, row_id) VALUES ('junk', 'Z',"
            + " 'patch.note', '')"
      })
  void a_check_reads_void_patches_and_the_history_too(String sql) throws SQLException {
    boathouse.burn("char");
    log.voidPatch("P-0001", "Ada", "knot");
    assertThat(log.check()).isEmpty();
    raw(sql);
    assertThatThrownBy(() -> log.check())
        .isInstanceOfSatisfying(
            Refusal.class, r -> assertThat(r.kind()).isEqualTo(Refusal.Kind.DATA))
        .hasMessageContaining("a row cannot be read: ");
  }

  @Test
  void a_reading_struck_by_raw_sql_is_told_with_its_reason() throws SQLException {
    boathouse.burn("char");
    log.addReading("P-0001", boathouse.reading(2, "char"));
    raw("UPDATE reading SET voided_why = 'never made' WHERE passes = 2");
    raw("UPDATE reading SET voided_why = 'made elsewhere' WHERE passes = 2");
    assertThat(log.history("P-0001"))
        .extracting(Change::words, Change::why)
        .containsExactly(
            tuple("reading struck: char after 2 passes", Optional.of("never made")),
            tuple(
                "reason for striking a reading from never made to made elsewhere",
                Optional.empty()));
  }

  @Test
  void every_column_that_can_be_amended_is_watched() throws SQLException {
    try (Database database = LogFile.openExisting(file)) {
      for (String table :
          List.of("rig", "power_check", "board", "finish", "coat", "patch", "reading", "photo")) {
        List<String> columns =
            database.query("SELECT name FROM pragma_table_info(?)", r -> r.text("name"), table);
        String kept =
            database
                .first(
                    "SELECT sql FROM sqlite_schema WHERE name = ?",
                    r -> r.text("sql"),
                    table + "_changes_are_kept")
                .orElseThrow();
        String fixed =
            database
                .first(
                    "SELECT sql FROM sqlite_schema WHERE name = ?",
                    r -> r.text("sql"),
                    table + "_keeps_its_identity")
                .orElseThrow();
        for (String column : columns) {
          assertThat(
                  kept.contains("OLD." + column + ", NEW." + column)
                      || kept.contains("OLD." + column + " AS before")
                      || fixed.contains("OLD." + column + " IS NOT NEW." + column))
              .as("%s.%s", table, column)
              .isTrue();
        }
      }
    }
  }

  @Test
  void rigs_and_boards_can_be_amended_and_the_old_values_stay() {
    Rig r = boathouse.rig;
    Rig lens = RigBuilder.like(r).spotMillimetres(0.6).lens(Optional.empty()).build();
    log.amend(lens, "Ada", "new lens");
    assertThat(log.rig("shop-200")).isEqualTo(lens);
    Board b = boathouse.board;
    Board oak =
        new Board(b.id(), b.name(), "oak", b.form(), b.condition(), b.moisturePercent(), b.job());
    log.amend(oak, "Ada", "it is oak");
    assertThat(log.board("door stile")).isEqualTo(oak);
    try (Database database = LogFile.openExisting(file)) {
      assertThat(database.query("SELECT what FROM change ORDER BY number", row -> row.text("what")))
          .containsExactly("rig.spot_mm", "rig.lens", "board.wood");
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          rig         | A rig is never deleted; it stays for the patches burned with it.
          power_check | A power check is never deleted; amend it, or void it.
          board       | A board is never deleted; it stays for the patches burned on it.
          finish      | A finish is never deleted; it stays for the patches burned on it.
          coat        | A coat is never deleted; amend it instead.
          patch       | A patch is never deleted; void it instead.
          reading     | A reading is never deleted; amend it, or void the patch.
          photo       | A photo is never deleted; void the patch if it is wrong.
          change      | The history of changes is never deleted.
          """)
  void nothing_is_deleted(String table, String sentence) throws SQLException {
    fillEveryTable();
    assertThatThrownBy(() -> raw("DELETE FROM " + table))
        .isInstanceOf(SQLException.class)
        .hasMessageContaining(sentence);
    try (Database database = LogFile.openExisting(file)) {
      assertThatThrownBy(() -> database.update("DELETE FROM " + table))
          .isInstanceOf(Refusal.class)
          .hasMessage(sentence);
    }
  }

  private void fillEveryTable() throws SQLException {
    boathouse.burn("clean");
    log.rigEntries().addCheck("shop-200", new PowerCheck(log.newId(), MORNING, 100, 180), "Ada");
    log.voidPatch("P-0001", "Ada", "test");
    raw(
        "INSERT INTO photo (id, patch_id, file_name, media_type, content, taken_at_utc,"
            + " taken_at_offset) SELECT '%s', id, 'a.jpg', 'image/jpeg', x'00', burned_at_utc, 'Z'"
                .formatted(log.newId())
            + " FROM patch");
  }

  @Test
  void the_history_cannot_be_rewritten() throws SQLException {
    fillEveryTable();
    assertThatThrownBy(() -> raw("UPDATE change SET why = 'never mind'"))
        .hasMessageContaining("The history of changes is never amended.");
    assertThatThrownBy(() -> raw("UPDATE patch SET code = 'P-0007'"))
        .hasMessageContaining("A patch keeps its identity and code");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          UPDATE rig SET rated_w = 0                      | rated power is positive
          UPDATE rig SET wavelength_nm = -1               | wavelength is positive
          UPDATE patch SET place = 'roof' | place is known
          UPDATE patch SET strokes_s = '4.1' | stroke length comes with times
          UPDATE patch SET temperature_c = 500 | temperature is one of wood
          UPDATE rig SET beam_quality = 0.5 | beam quality is 1 or more
          INSERT INTO rig SELECT replace(id, '-', '_'), 'other', 'glow', rated_w, wavelength_nm, spot_definition, spot_mm, repetition_khz, pulse_ns, scan_width_mm, lens, recorded_at_utc, recorded_at_offset, recorded_by, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL FROM rig | rig is pulsed or cw
          UPDATE rig SET spot_definition = 'about'        | rig spot definition is known
          UPDATE rig SET name = ' '                       | rig has a name
          UPDATE rig SET repetition_khz = 0               | usual repetition rate is positive
          UPDATE power_check SET metered_w = 0            | metered power is positive
          UPDATE power_check SET setting_pct = 101        | power check setting is above 0 and up to 100 percent
          UPDATE power_check SET metered_at_utc = 'today' | power check time is utc
          UPDATE board SET form = 'log'                   | board form is known
          UPDATE board SET moisture_pct = -1              | moisture is 0 or more
          UPDATE coat SET tone = 'pink'                   | coat tone is known
          UPDATE coat SET thickness_um = 0                | coat thickness is positive
          UPDATE patch SET power_w = 100                  | patch power is in percent or in watts
          UPDATE patch SET power_pct = NULL               | patch power is in percent or in watts
          UPDATE patch SET power_pct = 120                | power is above 0 and up to 100 percent
          UPDATE patch SET timed_area_cm2 = 1             | patch has exactly one dose form
          UPDATE patch SET hand_speed_mm_s = NULL         | patch has exactly one dose form
          UPDATE patch SET hand_speed_mm_s = 0            | hand speed is positive
          UPDATE patch SET scan_width_mm = -60            | scan width is positive
          UPDATE patch SET spot_mm = 0                    | spot diameter is positive
          UPDATE patch SET spot_definition = 'wide'       | spot definition is known
          UPDATE patch SET repetition_khz = 0             | repetition rate is positive
          UPDATE patch SET pulse_ns = 0                   | pulse duration is positive
          UPDATE patch SET patch_cm2 = 0                  | patch size is positive
          UPDATE patch SET typed_json = '[]'              | typed text is a json object
          UPDATE patch SET voided_why = ' '               | patch is void for a reason
          UPDATE patch SET burned_at_utc = '2026-02-30T00:00:00.000Z' | patch time is utc
          UPDATE patch SET burned_at_offset = 'here'      | patch offset is a zone offset
          UPDATE reading SET passes = 0                   | passes are 1 or more
          UPDATE reading SET outcome = 'clean+char'       | outcome is clean alone or a mix of tint char and residue
          UPDATE reading SET soot = 2                     | soot is yes or no
          UPDATE reading SET depth_um = -1                | depth removed is 0 or more
          """)
  void a_bad_row_is_refused_by_a_named_rule(String sql, String rule) throws SQLException {
    fillEveryTable();
    try (Database database = LogFile.openExisting(file)) {
      assertThatThrownBy(() -> database.update(sql))
          .isInstanceOf(Refusal.class)
          .hasMessage("Nothing was recorded: it breaks the log's rule \"%s\".", rule);
    }
  }

  @Test
  void a_patch_must_fit_the_light_of_its_rig() {
    boathouse.burn("clean");
    try (Database database = LogFile.openExisting(file)) {
      assertThatThrownBy(
              () -> database.update("UPDATE patch SET repetition_khz = NULL, pulse_ns = NULL"))
          .hasMessage(
              "A patch burned with a pulsed rig must have a repetition rate; none was given.");
      assertThatThrownBy(() -> database.update("UPDATE rig SET emission = 'cw'"))
          .hasMessage(
              "A rig that has burned patches stays pulsed or continuous as it was; add a new rig"
                  + " instead.");
      assertThatThrownBy(() -> database.update("UPDATE board SET wood = 'glass'"))
          .hasMessage(
              "Nothing was recorded: the record refers to something that is not in this log; add"
                  + " that first.");
    }
  }

  @Test
  void a_patch_of_a_rig_that_was_never_recorded_is_refused() {
    Rig r = boathouse.rig;
    Rig stranger = RigBuilder.like(r).id(log.newId()).named("stranger").checks(List.of()).build();
    Patch patch =
        new Patch(
            log.newId(),
            "P-0001",
            MORNING,
            stranger,
            boathouse.board,
            boathouse.finish,
            Boathouse.pulsed(new HandPass(60, 30)),
            OptionalDouble.empty(),
            List.of(boathouse.reading(1, "clean")));
    assertThatThrownBy(() -> log.add(Boathouse.entry(patch)))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("refers to something that is not in this log");
    assertThat(log.hasPatch("P-0001")).isFalse();
  }
}
