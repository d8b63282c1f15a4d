package charline.log;

import static charline.log.Boathouse.CLOCK;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import charline.log.database.Database;
import charline.log.upgrade.Migrations;
import charline.refusal.Refusal;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LogFileTest {
  @TempDir Path folder;

  private Path madeLog() {
    Path file = folder.resolve("boathouse.db");
    try (Logbook log = Logbook.open(file, CLOCK)) {
      new Boathouse(log).burn("clean");
    }
    return file;
  }

  private static void sql(Path file, String... statements) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      for (String sql : statements) {
        statement.execute(sql);
      }
    }
  }

  /** Refusal with that sentence, by both ways to open, and not a byte or file is different. */
  private void refused(Path file, String sentence) throws IOException {
    byte[] before = Files.readAllBytes(file);
    for (Callable<Logbook> opening :
        List.<Callable<Logbook>>of(
            () -> Logbook.open(file, CLOCK), () -> Logbook.openExisting(file, CLOCK))) {
      assertThatThrownBy(opening::call)
          .isInstanceOfSatisfying(
              Refusal.class, r -> assertThat(r.kind()).isEqualTo(Refusal.Kind.DATA))
          .hasMessageContaining(sentence)
          .hasMessageContaining(file.toString());
    }
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files).containsExactly(file);
    }
  }

  @Test
  void a_new_log_is_made_with_its_folders_and_leaves_one_file() throws IOException {
    Path file = folder.resolve("a/b/boathouse.db");
    Logbook.open(file, CLOCK).close();
    try (Stream<Path> files = Files.list(file.getParent())) {
      assertThat(files).containsExactly(file);
    }
    Logbook.openExisting(file, CLOCK).close();
  }

  @Test
  void a_log_that_is_not_there_is_not_made_by_a_reading_command() {
    Path file = folder.resolve("boathouse.db");
    assertThatThrownBy(() -> Logbook.openExisting(file, CLOCK))
        .isInstanceOf(Refusal.class)
        .hasMessage(
            "There is no log at %s yet; record a patch or import a trial sheet first, or choose"
                + " another log.",
            file);
    assertThat(file).doesNotExist();
  }

  @Test
  void the_program_knows_the_newest_migration() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("db/migration"))) {
      assertThat(
              files
                  .map(f -> f.getFileName().toString())
                  .filter(f -> f.startsWith("V"))
                  .mapToInt(f -> Integer.parseInt(f.substring(1, f.indexOf("__"))))
                  .max())
          .hasValue(Migrations.NEWEST);
    }
  }

  @Test
  void a_log_is_kept_in_write_ahead_mode_with_full_synchronisation_and_checked_keys() {
    try (Database database = LogFile.open(folder.resolve("boathouse.db"))) {
      assertThat(database.first("PRAGMA journal_mode", r -> r.text("journal_mode")))
          .contains("wal");
      assertThat(database.first("PRAGMA synchronous", r -> r.whole("synchronous"))).contains(2);
      assertThat(database.first("PRAGMA foreign_keys", r -> r.whole("foreign_keys"))).contains(1);
      assertThat(database.first("PRAGMA busy_timeout", r -> r.whole("timeout"))).contains(5000);
    }
  }

  @Test
  void a_random_file_is_refused() throws IOException {
    Path file = folder.resolve("holiday.jpg");
    byte[] bytes = new byte[5000];
    new Random(7).nextBytes(bytes);
    Files.write(file, bytes);
    refused(file, "is not a charline log, or its beginning is damaged; it was not changed.");
  }

  @Test
  void an_empty_file_is_refused() throws IOException {
    Path file = Files.createFile(folder.resolve("empty.db"));
    refused(file, "is not a charline log");
  }

  @Test
  void an_sqlite_file_of_another_program_is_refused() throws Exception {
    Path file = folder.resolve("other.db");
    sql(file, "CREATE TABLE rig (name TEXT)");
    refused(file, "is an SQLite file of another program, not a charline log");
  }

  @Test
  void a_log_with_damaged_pages_is_refused() throws IOException {
    Path file = madeLog();
    byte[] noise = new byte[40_000];
    new Random(11).nextBytes(noise);
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.write(ByteBuffer.wrap(noise), 8192);
    }
    refused(file, "is damaged (");
  }

  @Test
  void a_large_log_is_not_read_whole_at_every_start_and_damage_is_named_when_it_is_met()
      throws IOException {
    Path file = madeLog();
    try (Logbook log = Logbook.open(file, CLOCK)) {
      log.addPhoto(
          "P-0001",
          new Photo(
              log.newId(),
              "wall.jpg",
              "image/jpeg",
              new byte[17 << 20],
              Boathouse.MORNING,
              Optional.empty()),
          "Ada");
      assertThat(log.check()).isEmpty();
    }
    byte[] noise = new byte[40_000];
    new Random(11).nextBytes(noise);
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.write(ByteBuffer.wrap(noise), 8192);
    }
    byte[] before = Files.readAllBytes(file);
    assertThatThrownBy(
            () -> {
              try (Logbook log = Logbook.openExisting(file, CLOCK)) {
                log.reference().families();
                log.patches(Filter.ALL);
                assertThat(log.check()).isEmpty();
              }
            })
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("is damaged (");
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
  }

  @Test
  void a_log_cut_short_is_refused() throws IOException {
    Path file = madeLog();
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.truncate(Files.size(file) / 2);
    }
    refused(file, "is damaged (");
    Files.write(file, "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII));
    refused(file, "is damaged (it ends after 16 bytes)");
  }

  @Test
  void a_log_from_a_newer_version_is_refused() throws Exception {
    Path file = madeLog();
    sql(
        file,
        "INSERT INTO flyway_schema_history SELECT 99, '99', 'later', type, script, checksum,"
            + " installed_by, installed_on, execution_time, success FROM flyway_schema_history"
            + " WHERE version = '1'");
    refused(
        file,
        "comes from a newer charline (its version is 99, this one reads up to %d)"
            .formatted(Migrations.NEWEST));
  }

  @Test
  void a_write_protected_log_is_refused() throws IOException {
    Path file = madeLog();
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r--r--r--"));
    refused(file, "is write-protected; make it writable or choose another log.");
  }

  @Test
  void a_folder_is_refused() {
    assertThatThrownBy(() -> Logbook.open(folder, CLOCK))
        .isInstanceOf(Refusal.class)
        .hasMessage("%s is a folder; choose a file for the log.", folder);
  }

  @Test
  void a_log_that_cannot_be_made_is_refused() throws IOException {
    Path inTheWay = Files.writeString(folder.resolve("logs"), "a file, not a folder");
    assertThatThrownBy(() -> Logbook.open(inTheWay.resolve("boathouse.db"), CLOCK))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("boathouse.db cannot be created (")
        .hasMessageEndingWith("check the folder or choose another file.");
    assertThat(inTheWay).hasContent("a file, not a folder");
  }

  @Test
  void a_full_disk_is_refused_and_nothing_is_half_written() {
    Database database = LogFile.open(folder.resolve("boathouse.db"));
    try (Logbook log = Logbook.over(database, CLOCK)) {
      Boathouse boathouse = new Boathouse(log);
      boathouse.burn("clean");
      database.query("PRAGMA max_page_count = 1", row -> row.whole("max_page_count"));
      assertThatThrownBy(
              () ->
                  log.inTransaction(
                      () -> {
                        IntStream.range(0, 2000).forEach(i -> boathouse.burn("tint"));
                        return null;
                      }))
          .isInstanceOf(Refusal.class)
          .hasMessageStartingWith("The disk is full, so nothing was recorded in ");
      assertThat(log.patches(Filter.ALL)).hasSize(1);
    }
  }

  @Test
  void two_programs_with_one_log_open_both_record_and_codes_never_clash() throws Exception {
    Path file = folder.resolve("boathouse.db");
    Logbook.open(file, CLOCK).close();
    try (Logbook setUp = Logbook.open(file, CLOCK)) {
      new Boathouse(setUp);
    }
    ExecutorService both = Executors.newFixedThreadPool(2);
    try {
      List<Future<Integer>> done = new ArrayList<>();
      for (int i = 0; i < 2; i++) {
        done.add(both.submit(() -> burnForty(file)));
      }
      for (Future<Integer> each : done) {
        assertThat(each.get()).isEqualTo(40);
      }
    } finally {
      both.shutdown();
    }
    try (Logbook log = Logbook.openExisting(file, CLOCK)) {
      assertThat(log.patches(Filter.ALL))
          .extracting(e -> e.patch().code())
          .doesNotHaveDuplicates()
          .hasSize(80)
          .contains("P-0001", "P-0080");
    }
  }

  private static int burnForty(Path file) {
    try (Logbook log = Logbook.open(file, CLOCK)) {
      int burned = 0;
      for (; burned < 40; burned++) {
        log.inTransaction(
            () -> {
              Boathouse there = Boathouse.alreadySetUp(log);
              log.add(
                  Boathouse.entry(
                      there.patch(
                          log.nextPatchCode(), Boathouse.MORNING, there.reading(1, "clean"))));
              return null;
            });
      }
      return burned;
    }
  }

  @Test
  void two_programs_may_make_the_same_log_at_once()
      throws InterruptedException, ExecutionException {
    Path file = folder.resolve("boathouse.db");
    ExecutorService both = Executors.newFixedThreadPool(2);
    try {
      Callable<Boolean> making =
          () -> {
            try (Logbook log = Logbook.open(file, CLOCK)) {
              return !log.reference().families().isEmpty();
            }
          };
      for (Future<Boolean> made : both.invokeAll(List.of(making, making))) {
        assertThat(made.get()).isTrue();
      }
    } finally {
      both.shutdown();
    }
  }

  @Test
  void a_log_held_by_another_program_is_refused_after_a_wait() throws Exception {
    Path file = madeLog();
    try (Logbook log = Logbook.open(file, CLOCK);
        Connection other = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = other.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
      assertThatThrownBy(() -> log.voidPatch("P-0001", "Ada", "wrong board"))
          .isInstanceOf(Refusal.class)
          .hasMessageContaining("for more than 5 s, so nothing was recorded; try again.");
      statement.execute("ROLLBACK");
      log.voidPatch("P-0001", "Ada", "wrong board");
      assertThat(log.lastPatch("Ada")).isEmpty();
    }
  }
}
