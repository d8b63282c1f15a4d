package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A log damaged at random bytes. SQLite keeps no checksums, so a letter changed inside a note is a
 * note; all else has to be named. Whatever it is, no command falls over it, and none that reads
 * changes a byte.
 */
class DamagedLogTest {
  private static final int DAMAGES = Integer.getInteger("charline.damages", 30);

  private static final int PAGE = 4096;

  @TempDir Path folder;
  private Path file;
  private byte[] sound;
  private Shell shell;

  @BeforeEach
  void sound() throws IOException {
    file = folder.resolve("boathouse.db");
    shell = new Shell(folder);
    shell.mustDo(
        "import sample-trials/latex-on-pine.csv --rigs sample-trials/rigs.csv --power-checks"
            + " sample-trials/power-checks.csv");
    shell.mustDo("patch amend LP-01 --note \"judged by lamp\" --why \"in the notebook\"");
    sound = Files.readAllBytes(file);
  }

  /**
   * @param step damage begins at a multiple of it
   */
  private int named(int length, int step, Random random) throws IOException {
    int named = 0;
    for (int i = 0; i < DAMAGES; i++) {
      byte[] damaged = sound.clone();
      int at = step * random.nextInt((sound.length - length) / step);
      byte[] noise = new byte[length];
      random.nextBytes(noise);
      System.arraycopy(noise, 0, damaged, at, length);
      Files.write(file, damaged);
      for (String line : List.of("find", "check", "patch show LP-01", "board list")) {
        Shell.Result result = shell.run(line);
        assertThat(result.err())
            .as("%s with %d bytes changed at %d", line, length, at)
            .doesNotContain("has a fault", "Exception", "\tat ")
            .hasLineCount(result.err().isEmpty() ? 0 : 1);
        assertThat(result.code()).isBetween(0, 3);
        if (line.equals("check") && result.code() == 3) {
          named++;
        }
      }
      assertThat(Files.readAllBytes(file))
          .as("%d bytes changed at %d", length, at)
          .isEqualTo(damaged);
    }
    return named;
  }

  @Test
  void pages_that_begin_with_noise_are_named_and_left_as_they_are() throws IOException {
    // The rest are pages that only go on with a long text, in which any letter is a letter.
    assertThat(named(300, PAGE, new Random(5))).isGreaterThan(DAMAGES / 2);
  }

  @Test
  void noise_anywhere_never_brings_a_command_down() throws IOException {
    assertThat(named(300, 1, new Random(6))).isPositive();
  }

  /** Flyway alone reads all of it, and says so in its own way. */
  @Test
  void a_damaged_table_of_versions_is_named() throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      statement.execute(
          "UPDATE flyway_schema_history SET installed_on = 'noon' WHERE installed_rank = 1");
    }
    for (String line : List.of("check", "find")) {
      Shell.Result result = shell.run(line);
      assertThat(result.err()).as(line).doesNotContain("has a fault", "Exception");
      assertThat(result.code()).as(line).isIn(0, 3);
    }
    assertThat(shell.run("check").err()).contains("boathouse.db");
  }

  @Test
  void single_bytes_never_bring_a_command_down() throws IOException {
    assertThat(named(1, 1, new Random(7))).isBetween(0, DAMAGES - 1);
  }
}
