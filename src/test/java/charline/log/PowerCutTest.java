package charline.log;

import static charline.log.Boathouse.CLOCK;
import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Power that fails while a bench records. A recording process runs over a shim ({@code
 * powercut/journal.c}) that writes down every write and every wait for the disk; the test then
 * plays the files back up to a random moment, keeping what was waited for and a random part of what
 * was not. {@code -Dcharline.cuts=2000} cuts as often as that; skipped without a C compiler on
 * Linux.
 *
 * <p>This can show that what was acknowledged had been waited for in the right order, for the log
 * itself, for its write-ahead file and for its name in the folder, and that whatever else is lost
 * or torn leaves a sound log. It cannot show that a disk does what it is told: one that says
 * "written" before it has written loses what it likes. Nor does it tear within a block of 4096
 * bytes, or bring old content of a disk back.
 */
class PowerCutTest {
  private static final int CUTS = Integer.getInteger("charline.cuts", 40);
  private static final int PATCHES = 12;

  @TempDir Path folder;

  private Path shim() throws Exception {
    Path library = folder.resolve("journal.so");
    Process compiler;
    try {
      compiler =
          new ProcessBuilder(
                  "cc",
                  "-shared",
                  "-fPIC",
                  "-O1",
                  "-o",
                  library.toString(),
                  "src/test/resources/powercut/journal.c",
                  "-ldl")
              .redirectErrorStream(true)
              .redirectOutput(folder.resolve("cc.txt").toFile())
              .start();
    } catch (IOException e) {
      compiler = null;
    }
    assumeTrue(
        System.getProperty("os.name").equals("Linux") && compiler != null,
        "There is no C compiler here.");
    assertThat(compiler.waitFor()).as(Files.readString(folder.resolve("cc.txt"))).isZero();
    return library;
  }

  /** Records a new log in a process over the shim, until it has said enough; gives its journal. */
  private DiskJournal recorded(Path disk, Path said) throws Exception {
    Path journal = folder.resolve("journal.bin");
    ProcessBuilder builder =
        new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-XX:+UseSerialGC",
            "-XX:-UsePerfData",
            "-cp",
            System.getProperty("java.class.path"),
            FirstRecorder.class.getName(),
            disk.resolve("boathouse.db").toString(),
            Integer.toString(PATCHES));
    builder.environment().put("LD_PRELOAD", shim().toString());
    builder.environment().put("POWERCUT_FOLDER", disk.toString());
    builder.environment().put("POWERCUT_JOURNAL", journal.toString());
    Process process =
        builder
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .redirectOutput(said.toFile())
            .start();
    while (process.isAlive()) {
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(20));
    }
    assertThat(process.exitValue()).isZero();
    return DiskJournal.read(journal, disk);
  }

  @Test
  void what_was_acknowledged_before_a_power_cut_is_in_the_log_and_the_log_is_sound()
      throws Exception {
    Path disk = Files.createDirectory(folder.resolve("disk"));
    Path said = disk.resolve("said.txt");
    DiskJournal journal = recorded(disk, said);
    assertThat(new String(journal.written(said), StandardCharsets.UTF_8))
        .as("the shim sees what the program writes")
        .contains("P-0001 1", "P-0012 void");
    Random random = new Random(20261129);
    int acknowledged = 0;
    for (int cut = 0; cut < CUTS; cut++) {
      int after = 1 + random.nextInt(journal.size());
      Path left = Files.createDirectory(folder.resolve("cut-" + cut));
      journal.cut(after, random, left);
      acknowledged += holdsAll(left, journal.saidBy(said, after));
    }
    assertThat(acknowledged).as("cuts came while patches were recorded").isGreaterThan(CUTS);
  }

  /** Checks that a log holds what was said; gives how much that was. */
  private static int holdsAll(Path left, List<String> said) {
    Path file = left.resolve("boathouse.db");
    if (said.isEmpty() && !Files.exists(file)) {
      return 0;
    }
    try (Logbook log = Logbook.openExisting(file, CLOCK)) {
      for (String line : said) {
        String[] words = line.split(" ");
        PatchEntry entry = log.patch(words[0]);
        if (words[1].equals("void")) {
          assertThat(entry.voided()).as(line).isPresent();
        } else {
          assertThat(entry.patch().readings())
              .as(line)
              .anyMatch(reading -> reading.passes() == Integer.parseInt(words[1]));
        }
      }
      assertThat(log.check()).isEmpty();
    }
    return said.size();
  }
}
