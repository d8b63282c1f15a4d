package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A log or a backup that nobody may write to. */
class WriteProtectedLogTest {
  private static final String PATCH =
      "patch add --board boathouse-1 --finish wall-latex --power 60% --hand 22mm/s --passes 1"
          + " --outcome residue";

  @TempDir Path folder;
  private Shell shell;
  private Path log;

  @BeforeEach
  void protect() throws IOException {
    shell = Shell.withBench(folder).mustDo(PATCH);
    log = folder.resolve("boathouse.db");
    Files.setPosixFilePermissions(log, PosixFilePermissions.fromString("r--r--r--"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "find latex",
        "find",
        "patch show 1",
        "board list",
        "rig show Heron",
        "check",
        "export --to DIR/out.csv",
        "backup DIR/copy.db",
        "plan list"
      })
  void what_only_reads_is_answered(String line) throws IOException {
    byte[] before = Files.readAllBytes(log);
    Shell.Result result = shell.run(line.replace("DIR", folder.toString()));
    assertThat(result.err()).doesNotContain("write-protected");
    assertThat(result.code()).isBetween(0, 1);
    assertThat(Files.readAllBytes(log)).isEqualTo(before);
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files.map(f -> f.getFileName().toString()))
          .isSubsetOf(List.of("boathouse.db", "out.csv", "copy.db", "data"));
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "patch add --like last --outcome clean",
        "patch read 1 --passes 2 --outcome clean",
        "patch void 1 --why x",
        "board amend boathouse-1 --job shed --why x",
        "rig check Heron --power 50% --metered 80W"
      })
  void what_writes_is_refused_and_nothing_is_lost(String line) throws IOException {
    byte[] before = Files.readAllBytes(log);
    Shell.Result result = shell.run(line);
    assertThat(result.code()).isEqualTo(3);
    assertThat(result.err())
        .isEqualTo(
            "The log %s is write-protected; make it writable or choose another log.\n"
                .formatted(log));
    assertThat(Files.readAllBytes(log)).isEqualTo(before);
  }

  @Test
  void an_older_log_is_asked_as_it_is() throws IOException {
    Path old =
        Files.copy(Path.of("src/test/resources/old/version-13.db"), folder.resolve("old.db"));
    Files.setPosixFilePermissions(old, PosixFilePermissions.fromString("r--r--r--"));
    byte[] before = Files.readAllBytes(old);
    Shell.Result found = shell.run("--log " + old + " find latex");
    assertThat(found.err()).isEmpty();
    assertThat(found.code()).isZero();
    assertThat(Files.readAllBytes(old)).isEqualTo(before);
    assertThat(folder.resolve("old-of-version-13.db")).doesNotExist();
  }
}
