package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Input that never ends, or that nobody would wait for. A test that hangs is stopped. */
@Timeout(60)
class EndlessInputTest {
  private static final Path ENDLESS = Path.of("/dev/zero");

  @TempDir Path folder;
  private Shell shell;

  @BeforeEach
  void open() {
    shell = Shell.withBench(folder);
  }

  /** A refusal in one sentence, never a fault. */
  private String refused(String line) {
    Shell.Result result = shell.run(line);
    assertThat(result.code()).as(result.err()).isBetween(2, 3);
    assertThat(result.err()).hasLineCount(1).doesNotContain("fault");
    return result.err();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "import /dev/zero",
        "import --rigs /dev/zero",
        "import --samples /dev/zero",
        "window latex pine --prior /dev/zero",
        "merge /dev/zero",
        "--log /dev/zero find",
        "--log /dev/zero check"
      })
  void a_device_that_never_ends_is_no_file(String line) {
    assumeTrue(Files.exists(ENDLESS));
    assertThat(refused(line)).contains("/dev/zero is a device or a pipe");
  }

  @Test
  void a_pipe_that_nobody_writes_to_is_no_file() throws Exception {
    Path pipe = folder.resolve("pipe.csv");
    assumeTrue(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor() == 0);
    assertThat(refused("import " + pipe)).contains("pipe.csv is a device or a pipe");
    assertThat(refused("merge " + pipe)).contains("pipe.csv is a device or a pipe");
  }

  @Test
  void a_question_of_a_hundred_thousand_letters_is_refused_at_once() {
    assertThat(refused("find " + "pine ".repeat(20_000)))
        .isEqualTo(
            "A question must be at most 1000 characters long, not 99999; ask for less at once.\n");
    assertThat(refused("find " + "p".repeat(100_000)))
        .isEqualTo(
            "A word of a command must be at most 4096 characters, and \"pppppppppppppppppppp...\""
                + " has 100000; shorten it.\n");
  }

  @Test
  void a_job_has_a_length() {
    assertThat(refused("board add b --wood pine --job " + "j".repeat(121)))
        .isEqualTo("--job: A job must be at most 120 characters, not 121; shorten it.\n");
    shell.mustDo("board add b --wood pine --job " + "j".repeat(120));
  }

  @Test
  void a_sheet_of_a_fifty_thousand_columns_is_refused_at_once() throws IOException {
    StringBuilder head = new StringBuilder("patch");
    for (int i = 0; i < 50_000; i++) {
      head.append(",column").append(i);
    }
    Path sheet = Files.writeString(folder.resolve("wide.csv"), head + "\n1\n");
    assertThat(refused("import " + sheet))
        .isEqualTo("wide.csv must have at most 500 columns, not 50001; check its separators.\n");
  }

  @Test
  void a_cell_of_ten_megabytes_is_refused_with_its_line() throws IOException {
    Path sheet =
        Files.writeString(
            folder.resolve("long.csv"), "patch,rig\n1,heron\n2," + "x".repeat(10_000_000) + "\n");
    assertThat(refused("import " + sheet))
        .isEqualTo(
            "Line 3 of long.csv is longer than 1000000 characters; check its quotes and line"
                + " ends.\n");
  }
}
