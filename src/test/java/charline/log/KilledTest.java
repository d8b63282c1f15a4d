package charline.log;

import static charline.log.Boathouse.CLOCK;
import static org.assertj.core.api.Assertions.assertThat;

import charline.log.database.SqliteFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Recording processes that are killed at random moments. {@code -Dcharline.kills=500} kills as
 * often as that.
 */
class KilledTest {
  private static final int KILLS = Integer.getInteger("charline.kills", 8);

  private final Random random = new Random(20261125);
  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void setUp() {
    file = folder.resolve("boathouse.db");
    try (Logbook log = Logbook.open(file, CLOCK)) {
      new Boathouse(log);
    }
  }

  /** A process with what it says, which outlives it. */
  private record Bench(Process process, Path says) {
    /** Complete lines only: one cut off by the kill was not said. */
    List<String> said() throws IOException {
      String text = Files.readString(says);
      int end = text.lastIndexOf('\n');
      return end < 0 ? List.of() : text.substring(0, end).lines().toList();
    }

    void awaitReady() throws IOException {
      while (process.isAlive() && said().isEmpty()) {
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(2));
      }
      assertThat(said()).startsWith("ready");
    }

    void kill() throws InterruptedException {
      process.destroyForcibly().waitFor();
    }
  }

  private Bench recorder(int patches) throws IOException {
    Path says = Files.createTempFile(folder, "bench", ".txt");
    List<String> words =
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-XX:+UseSerialGC",
            "--enable-native-access=ALL-UNNAMED",
            "-cp",
            System.getProperty("java.class.path"),
            Recorder.class.getName(),
            file.toString(),
            Integer.toString(patches));
    Process process =
        new ProcessBuilder(words)
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .redirectOutput(says.toFile())
            .start();
    return new Bench(process, says);
  }

  private static List<String> recorded(Bench bench) throws IOException {
    return bench.said().stream().filter(line -> !line.equals("ready")).toList();
  }

  private void holdsAll(List<String> said) {
    try (Logbook log = Logbook.openExisting(file, CLOCK)) {
      for (String line : said) {
        String[] words = line.split(" ");
        PatchEntry entry = log.patch(words[0]);
        if (words[1].equals("void")) {
          assertThat(entry.voided()).as(line).contains("on a knot");
        } else {
          assertThat(entry.patch().readings())
              .as(line)
              .anyMatch(reading -> reading.passes() == Integer.parseInt(words[1]));
        }
      }
      assertThat(log.check()).isEmpty();
    }
  }

  @Test
  void whatever_was_acknowledged_before_a_kill_is_in_the_log_and_the_log_is_sound()
      throws Exception {
    int acknowledged = 0;
    for (int i = 0; i < KILLS; i++) {
      Bench bench = recorder(100_000);
      bench.awaitReady();
      LockSupport.parkNanos(TimeUnit.MICROSECONDS.toNanos(random.nextInt(500_000)));
      bench.kill();
      List<String> said = recorded(bench);
      holdsAll(said);
      acknowledged += said.size();
    }
    assertThat(acknowledged).as("kills came while patches were recorded").isGreaterThan(KILLS);
  }

  @Test
  void a_kill_while_the_log_is_brought_up_to_date_leaves_it_as_it_was_or_as_it_should_be()
      throws Exception {
    for (int i = 0; i < Math.max(2, KILLS / 10); i++) {
      Files.deleteIfExists(file);
      Files.createFile(file);
      Flyway.configure()
          .dataSource(SqliteFile.source(file, true))
          .locations("classpath:db/migration")
          .target("3")
          .load()
          .migrate();
      Bench bench = recorder(0);
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(200 + random.nextInt(1500)));
      bench.kill();
      try (Logbook log = Logbook.openExisting(file, CLOCK)) {
        assertThat(log.reference().woods()).isNotEmpty();
        assertThat(log.check()).isEmpty();
      }
    }
  }

  @Test
  void two_processes_record_at_once_and_nothing_is_lost() throws Exception {
    Bench one = recorder(25);
    Bench other = recorder(25);
    assertThat(List.of(one.process().waitFor(), other.process().waitFor())).containsExactly(0, 0);
    List<String> said = new ArrayList<>(recorded(one));
    said.addAll(recorded(other));
    assertThat(said).hasSize(2 * 25 * 3).doesNotHaveDuplicates();
    holdsAll(said);
  }
}
