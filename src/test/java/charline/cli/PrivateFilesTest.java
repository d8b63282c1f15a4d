package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import charline.log.Logbook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** On a computer that several people use, a log is its owner's. */
class PrivateFilesTest {
  @TempDir Path folder;

  private static String permissions(Path file) throws IOException {
    return PosixFilePermissions.toString(Files.getPosixFilePermissions(file));
  }

  @Test
  void a_log_its_backups_and_its_sheets_are_readable_by_their_owner_alone() throws IOException {
    assumeTrue(Files.getFileStore(folder).supportsFileAttributeView("posix"));
    Shell shell = new Shell(folder).setUp();
    shell.mustDo(
        "patch add --board boathouse-1 --finish wall-latex --power 60% --hand 22mm/s --passes 1"
            + " --outcome residue");
    Path log = folder.resolve("boathouse.db");
    try (Logbook open = Logbook.open(log, Clock.systemUTC())) {
      assertThat(open.patches(charline.log.Filter.ALL)).hasSize(1);
      for (String ending : List.of("", "-wal", "-shm")) {
        assertThat(permissions(folder.resolve("boathouse.db" + ending)))
            .as(ending)
            .isEqualTo("rw-------");
      }
    }
    shell.mustDo("backup " + folder.resolve("copy.db"));
    shell.mustDo(
        "export --to %s --rigs %s"
            .formatted(folder.resolve("all.csv"), folder.resolve("rigs.csv")));
    for (String name : List.of("copy.db", "all.csv", "rigs.csv")) {
      assertThat(permissions(folder.resolve(name))).as(name).isEqualTo("rw-------");
    }
  }

  @Test
  void a_log_may_have_a_name_that_looks_like_options_of_a_driver() {
    for (String name : List.of("log?mode=ro.db", "log#1.db", "log%3F.db", "a mode=memory.db")) {
      Shell shell = new Shell(folder).set("CHARLINE_LOG", folder.resolve(name).toString());
      shell.mustDo("board add boathouse-1 --wood pine");
      assertThat(folder.resolve(name)).isRegularFile();
      assertThat(shell.run("board list").out()).contains("boathouse-1");
    }
  }
}
