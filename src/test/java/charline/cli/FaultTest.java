package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import charline.cli.command.Release;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a fault of the program looks like from outside; a clock that throws stands for it. */
class FaultTest {
  private static final String COMMAND =
      "patch add --board boathouse-1 --finish wall-latex --rig Heron --power 60% --hand 22mm/s"
          + " --passes 1 --outcome residue --note \"under the window seat\"";

  @TempDir Path folder;
  private Shell shell;

  /** A clock that throws. */
  private static final class Broken extends Clock {
    private final Throwable fault;

    Broken(Throwable fault) {
      this.fault = fault;
    }

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }

    @Override
    public Instant instant() {
      if (fault instanceof Error error) {
        throw error;
      }
      throw (RuntimeException) fault;
    }
  }

  @BeforeEach
  void bench() {
    shell = Shell.withBench(folder);
  }

  private List<Path> files() throws IOException {
    try (Stream<Path> all = Files.list(folder.resolve("data/charline/faults"))) {
      return all.toList();
    }
  }

  @Test
  void a_fault_ends_with_4_and_one_sentence_that_names_the_file() throws IOException {
    shell.with(new Broken(new IllegalArgumentException("two hands\nat noon")));

    Shell.Result result = shell.run(COMMAND);

    assertThat(result.code()).isEqualTo(4);
    assertThat(result.out()).isEmpty();
    assertThat(files()).hasSize(1);
    assertThat(result.err())
        .isEqualTo(
            "charline has a fault (IllegalArgumentException); nothing more was done. The details"
                + " are in %s; send that file to the makers of charline.\n"
                    .formatted(files().get(0)));
  }

  @Test
  void the_file_says_version_java_command_and_trace_but_nothing_that_was_typed()
      throws IOException {
    shell.with(new Broken(new IllegalStateException("two hands at noon"))).run(COMMAND);

    assertThat(files().get(0))
        .content()
        .contains(
            "charline " + Release.version() + "\n",
            "Java " + System.getProperty("java.version"),
            "\ncharline patch add\n",
            "java.lang.IllegalStateException: two hands at noon\n\tat charline.cli.FaultTest")
        .doesNotContain("window seat", "boathouse-1", "wall-latex", "22mm/s");
  }

  @Test
  void a_fault_that_comes_back_has_one_file_and_another_fault_its_own() throws IOException {
    shell.with(new Broken(new IllegalStateException("first")));
    shell.run(COMMAND);
    shell.run(COMMAND);
    assertThat(files()).hasSize(1);

    shell.with(new Broken(new IllegalStateException("another"))).run(COMMAND);
    assertThat(files()).hasSize(2);
  }

  @Test
  void errors_of_the_machine_are_faults_too() {
    assertThat(shell.with(new Broken(new StackOverflowError())).run(COMMAND).code()).isEqualTo(4);
    assertThat(shell.with(new Broken(new NoClassDefFoundError("x"))).run(COMMAND).code())
        .isEqualTo(4);
  }

  @Test
  void where_no_file_can_be_written_the_sentence_says_the_fault_itself() throws IOException {
    Path taken = Files.writeString(folder.resolve("taken"), "");
    shell.set("XDG_DATA_HOME", taken.toString()).set("HOME", taken.toString());
    shell.with(new Broken(new IllegalStateException("two hands\nat noon")));

    Shell.Result result = shell.run(COMMAND);

    assertThat(result.code()).isEqualTo(4);
    assertThat(result.err())
        .startsWith(
            "charline has a fault (IllegalStateException); nothing more was done. The file with"
                + " the details could not be written; the fault is"
                + " java.lang.IllegalStateException: two hands at charline.cli.FaultTest")
        .hasLineCount(1);
  }
}
