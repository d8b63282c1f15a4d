package charline.log;

import static charline.log.Boathouse.CLOCK;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import charline.log.database.Database;
import charline.log.database.SqliteFile;
import charline.log.database.Upgrade;
import charline.log.sheet.TrialSheetExporter;
import charline.log.upgrade.Migrations;
import charline.trial.Finish;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Statement;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.assertj.core.groups.Tuple;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Logs of earlier versions. */
class OldLogsTest {
  private static final Path OLD = Path.of("src/test/resources/old");

  @TempDir Path folder;

  /** Every log that a release left behind, with the trial sheet that it exported. */
  static Stream<String> released() throws IOException {
    try (Stream<Path> files = Files.list(OLD)) {
      List<String> names =
          files.map(f -> f.getFileName().toString()).filter(f -> f.endsWith(".db")).toList();
      assertThat(names).isNotEmpty();
      return names.stream();
    }
  }

  static IntStream earlierVersions() {
    return IntStream.range(3, Migrations.NEWEST);
  }

  @ParameterizedTest
  @MethodSource("released")
  void a_released_log_opens_is_sound_and_gives_back_every_row(String name) throws IOException {
    Path file = Files.copy(OLD.resolve(name), folder.resolve(name));
    try (Logbook log = Logbook.openExisting(file, CLOCK)) {
      StringWriter sheet = new StringWriter();
      TrialSheetExporter.write(log.patches(Filter.ALL), log.ownWords(), sheet);
      assertThat(sheet.toString())
          .isEqualTo(Files.readString(OLD.resolve(name.replace(".db", ".csv"))));
      assertThat(log.check()).filteredOn(finding -> finding.kind() == Finding.Kind.FAULT).isEmpty();
      assertThat(log.patch("LP-02").voided()).contains("on a knot");
      assertThat(log.history("LP-01"))
          .extracting(Change::why)
          .contains(Optional.of("found in the notebook"));
      assertThat(log.rigs()).anyMatch(rig -> !rig.checks().isEmpty());
    }
  }

  @Test
  void plans_and_a_photo_from_before_checksums_are_kept_through_an_upgrade() throws IOException {
    Path file = Files.copy(OLD.resolve("version-7.db"), folder.resolve("old.db"));
    try (Logbook log = Logbook.openExisting(file, CLOCK)) {
      assertThat(log.planned().all())
          .extracting(PlannedPatch::code, PlannedPatch::fulfilled)
          .containsExactly(tuple("P-0002", true), tuple("P-0003", false));
      assertThat(log.photos("LP-01"))
          .singleElement()
          .satisfies(
              p -> assertThat(log.photoContent(p.id()).readAllBytes()[1]).isEqualTo((byte) 'P'));
    }
  }

  @Test
  void a_plan_that_named_another_in_its_reason_hangs_on_it_after_an_upgrade() throws IOException {
    Path file = Files.copy(OLD.resolve("version-9.db"), folder.resolve("old.db"));
    try (Logbook log = Logbook.openExisting(file, CLOCK)) {
      assertThat(log.planned().open())
          .extracting(PlannedPatch::code, PlannedPatch::reason, PlannedPatch::reasonInFull)
          .containsExactly(
              tuple("P-0003", "confirms the start setting", "confirms the start setting"),
              tuple("P-0004", "lowest rung", "lowest rung"),
              rung("P-0005", "P-0004"),
              rung("P-0006", "P-0005"),
              rung("P-0007", "P-0006"));
    }
  }

  private static Tuple rung(String code, String below) {
    String reason = "next rung up, to bracket the onset";
    return tuple(code, reason, reason + "; only if " + below + " did not char");
  }

  @Test
  void a_reason_that_names_no_plan_stays_as_it_is() throws Exception {
    Path file = Files.copy(OLD.resolve("version-9.db"), folder.resolve("old.db"));
    String alone = "lowest rung; only if P-0999 did not char";
    try (Connection connection = SqliteFile.source(file, true).getConnection();
        Statement statement = connection.createStatement()) {
      String trigger = "planned_patch_stays_as_it_was_planned";
      String sql =
          SqliteFile.text(
              statement, "SELECT sql FROM sqlite_schema WHERE name = '%s'".formatted(trigger));
      statement.execute("DROP TRIGGER " + trigger);
      statement.execute(
          "UPDATE planned_patch SET reason = '%s' WHERE code = 'P-0004'".formatted(alone));
      statement.execute(sql);
    }
    try (Logbook log = Logbook.openExisting(file, CLOCK)) {
      assertThat(log.planned().open("P-0004").reasonInFull()).isEqualTo(alone);
      assertThat(log.planned().open("P-0004").condition()).isEmpty();
    }
  }

  @Test
  void coats_that_were_typed_as_bed_liner_move_and_plaster_stays_with_its_asbestos()
      throws Exception {
    Path file = logOfVersion(10);
    try (Connection connection = SqliteFile.source(file, true).getConnection();
        Statement statement = connection.createStatement()) {
      int n = 0;
      for (String name :
          List.of(
              "tender Bed-Liner", "polyurea deck", "stippled ceiling", "bed liner on plaster")) {
        String id = "018f0000-0000-7000-8000-00000000000" + n++;
        statement.execute(
            """
            INSERT INTO finish (id, name, family, recorded_at_utc, recorded_at_offset) VALUES
              ('%s', '%s', 'textured coat', '2026-03-01T09:00:00.000Z', '+01:00')
            """
                .formatted(id, name));
        statement.execute(
            "INSERT INTO coat (finish_id, position, family) VALUES ('%s', 1, 'textured coat')"
                .formatted(id));
      }
    }
    try (Logbook log = Logbook.openExisting(file, CLOCK)) {
      assertThat(log.finishes())
          .extracting(Finish::name, Finish::family, f -> f.coats().get(0).family())
          .containsExactlyInAnyOrder(
              tuple("tender Bed-Liner", "bed liner", "bed liner"),
              tuple("polyurea deck", "bed liner", "bed liner"),
              tuple("stippled ceiling", "textured coat", "textured coat"),
              tuple("bed liner on plaster", "textured coat", "textured coat"));
      assertThat(
              log.database()
                  .query(
                      "SELECT why FROM change WHERE what = 'finish.family'",
                      row -> row.text("why")))
          .containsExactly(
              "bed liner became a coating family of its own",
              "bed liner became a coating family of its own");
    }
  }

  private Path logOfVersion(int version) throws IOException {
    Path file = Files.createFile(folder.resolve("boathouse.db"));
    Migrations.apply(file, version);
    return file;
  }

  @ParameterizedTest
  @MethodSource("earlierVersions")
  void a_log_is_copied_before_its_schema_changes(int version) throws IOException {
    Path file = logOfVersion(version);
    try (Database database = LogFile.openExisting(file)) {
      Path kept = folder.resolve("boathouse-of-version-%d.db".formatted(version));
      assertThat(database.upgrade()).contains(new Upgrade(version, Migrations.NEWEST, kept));
      assertThat(versionOf(kept)).isEqualTo(version);
      assertThat(IntegrityCheck.faults(database)).isEmpty();
    }
    try (Database database = LogFile.openExisting(file)) {
      assertThat(database.upgrade()).as("nothing is pending any more").isEmpty();
    }
  }

  private static int versionOf(Path log) {
    return Integer.parseInt(
        Flyway.configure()
            .dataSource(SqliteFile.source(log, true))
            .locations("classpath:db/migration")
            .load()
            .info()
            .current()
            .getVersion()
            .getVersion());
  }

  @Test
  void an_earlier_copy_is_never_written_over() throws IOException {
    Path file = logOfVersion(5);
    Path earlier = Files.writeString(folder.resolve("boathouse-of-version-5.db"), "precious");
    try (Database database = LogFile.openExisting(file)) {
      assertThat(database.upgrade().orElseThrow().kept())
          .isEqualTo(folder.resolve("boathouse-of-version-5-2.db"));
    }
    assertThat(earlier).hasContent("precious");
  }

  @Test
  void two_programs_may_bring_the_same_log_up_to_date_at_once() throws Exception {
    for (int round = 0; round < 5; round++) {
      Path file = logOfVersion(4);
      ExecutorService both = Executors.newFixedThreadPool(2);
      try {
        Callable<Boolean> opening =
            () -> {
              try (Logbook log = Logbook.openExisting(file, CLOCK)) {
                return !log.reference().families().isEmpty();
              }
            };
        for (Future<Boolean> opened : both.invokeAll(List.of(opening, opening))) {
          assertThat(opened.get()).isTrue();
        }
      } finally {
        both.shutdown();
      }
      Files.delete(file);
    }
  }
}
