package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import charline.log.Filter;
import charline.log.Logbook;
import charline.log.database.SqlFailures;
import charline.log.database.SqliteFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A command that is stopped halfway. Ctrl-C and a request to end leave a program by one way. */
class StoppedTest {
  private static final int LINES = 60_000;

  @TempDir Path folder;

  /** Until somebody else keeps the log for writing. */
  private static void awaitWriting(Path log, Process process) throws SQLException {
    try (Connection connection = SqliteFile.source(log, false).getConnection();
        Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA busy_timeout = 0");
      while (process.isAlive()) {
        try {
          statement.execute("BEGIN IMMEDIATE");
          statement.execute("ROLLBACK");
        } catch (SQLException e) {
          assertThat(SqlFailures.busy(e)).isTrue();
          return;
        }
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(5));
      }
    }
    throw new AssertionError("It ended before it wrote.");
  }

  @Test
  void an_import_that_is_stopped_leaves_the_log_as_it_was() throws Exception {
    Shell shell = Shell.withBench(folder);
    shell.mustDo(
        "patch add --board boathouse-1 --finish wall-latex --power 60% --hand 22mm/s --passes 1"
            + " --outcome residue");
    Path log = folder.resolve("boathouse.db");
    Process process = importing(log, sheet());
    awaitWriting(log, process);
    process.destroy();
    assertThat(process.waitFor()).as("stopped, not finished").isEqualTo(143);
    try (Logbook open = Logbook.open(log, Clock.systemUTC())) {
      assertThat(open.patches(Filter.ALL)).hasSize(1);
      assertThat(open.check()).isEmpty();
    }
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files.map(f -> f.getFileName().toString()))
          .containsExactlyInAnyOrder("boathouse.db", "big.csv", "said.txt");
    }
  }

  private Path sheet() throws IOException {
    StringBuilder text =
        new StringBuilder(
            "patch,burned_at,rig,board,wood,family,power_pct,hand_mm_s,passes,outcome\n");
    for (int i = 0; i < LINES; i++) {
      text.append(
          String.format(
              Locale.ROOT,
              "B-%d,2026-05-03,Heron,b%d,pine,latex,%.1f,22,1,residue%n",
              i,
              i / 20,
              30 + i % 500 / 10.0));
    }
    return Files.writeString(folder.resolve("big.csv"), text);
  }

  private Process importing(Path log, Path sheet) throws IOException {
    List<String> words =
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-cp",
            System.getProperty("java.class.path"),
            Main.class.getName(),
            "--log",
            log.toString(),
            "import",
            "--sure",
            sheet.toString());
    return new ProcessBuilder(words)
        .redirectErrorStream(true)
        .redirectOutput(folder.resolve("said.txt").toFile())
        .start();
  }
}
