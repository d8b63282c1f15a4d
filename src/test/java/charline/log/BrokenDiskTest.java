package charline.log;

import static charline.log.Boathouse.CLOCK;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import charline.log.merge.Merge;
import charline.log.merge.Resolution;
import charline.refusal.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A log on a disk of 1 MB that fills up or turns read-only; skipped where none may be mounted. */
class BrokenDiskTest {
  @TempDir Path folder;
  private Path disk;
  private boolean mounted;

  @BeforeEach
  void mount() throws Exception {
    disk = Files.createDirectory(folder.resolve("disk"));
    mounted = run("mount", "-t", "tmpfs", "-o", "size=1m", "tmpfs", disk.toString());
    assumeTrue(mounted, "No small disk can be mounted here; run the tests as root.");
  }

  @AfterEach
  void unmount() throws Exception {
    if (mounted) {
      run("umount", disk.toString());
    }
  }

  private static boolean run(String... words) throws InterruptedException {
    try {
      return new ProcessBuilder(words)
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start()
              .waitFor()
          == 0;
    } catch (IOException e) {
      return false;
    }
  }

  @Test
  void a_patch_that_no_longer_fits_is_refused_and_all_before_it_stay() throws Exception {
    Path file = disk.resolve("boathouse.db");
    int burned = 0;
    try (Logbook log = Logbook.open(file, CLOCK)) {
      Boathouse boathouse = new Boathouse(log);
      for (boolean room = true; room; ) {
        try {
          boathouse.burn("clean");
          burned++;
        } catch (Refusal e) {
          room = false;
          assertThat(e)
              .hasMessage(
                  "The disk is full, so nothing was recorded in %s; make room and record it again.",
                  file);
        }
      }
      assertThat(log.patches(Filter.ALL)).hasSize(burned);
      Path copy = disk.resolve("copy.db");
      assertThatThrownBy(() -> log.backup(copy))
          .isInstanceOf(Refusal.class)
          .hasMessageStartingWith("The disk is full, so no copy of ");
      assertThat(copy).doesNotExist();
    }
    assertThat(burned).isPositive();
    try (Logbook log = Logbook.openExisting(file, CLOCK)) {
      assertThat(log.patches(Filter.ALL)).hasSize(burned);
      assertThat(log.check()).isEmpty();
    }
  }

  @Test
  void a_log_on_a_full_disk_that_cannot_be_opened_is_refused_with_the_reason() throws Exception {
    Path file = folder.resolve("boathouse.db");
    Logbook.open(file, CLOCK).close();
    Path there = Files.copy(file, disk.resolve("boathouse.db"));
    try (var filler = Files.newOutputStream(disk.resolve("filler"))) {
      while (true) {
        filler.write(new byte[4096]);
      }
    } catch (IOException full) {
      assertThatThrownBy(() -> Logbook.openToRead(there, CLOCK).close())
          .isInstanceOf(Refusal.class)
          .hasMessage(
              "The disk of the log %s is full, so the log cannot be opened; make room and try"
                  + " again.",
              there);
    }
  }

  @Test
  void a_log_that_does_not_fit_is_not_made() throws IOException {
    Files.write(disk.resolve("filler"), new byte[900_000]);
    Path file = disk.resolve("boathouse.db");
    assertThatThrownBy(() -> Logbook.open(file, CLOCK))
        .isInstanceOf(Refusal.class)
        .hasMessageStartingWith("The disk is full");
    try (var files = Files.list(disk)) {
      assertThat(files).containsExactly(disk.resolve("filler"));
    }
  }

  @Test
  void a_disk_that_turns_read_only_is_named_and_the_log_is_whole_afterwards() throws Exception {
    Path file = disk.resolve("boathouse.db");
    try (Logbook log = Logbook.open(file, CLOCK)) {
      Boathouse boathouse = new Boathouse(log);
      IntStream.range(0, 3).forEach(i -> boathouse.burn("clean"));
    }
    assertThat(run("mount", "-o", "remount,ro", disk.toString())).isTrue();
    byte[] before = Files.readAllBytes(file);
    assertThatThrownBy(() -> Logbook.open(file, CLOCK))
        .isInstanceOf(Refusal.class)
        .hasMessage("The log %s is write-protected; make it writable or choose another log.", file);
    try (Logbook log = Logbook.openToRead(file, CLOCK)) {
      assertThat(log.patches(Filter.ALL)).hasSize(3);
      assertThat(log.check()).isEmpty();
      log.backup(folder.resolve("copy.db"));
    }
    try (Logbook elsewhere = Logbook.open(folder.resolve("elsewhere.db"), CLOCK)) {
      assertThat(Merge.into(elsewhere, "Ada").from(file, Resolution.UNDECIDED).patches())
          .isEqualTo(3);
    }
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
    assertThat(run("mount", "-o", "remount,rw", disk.toString())).isTrue();
    try (Logbook log = Logbook.openExisting(file, CLOCK)) {
      assertThat(log.patches(Filter.ALL)).hasSize(3);
    }
  }

  /** As a bench leaves its log when it is switched off, or while it records. */
  private Path slipwayAsItIsRecordedIn() throws IOException {
    Path file = folder.resolve("slipway.db");
    Path there = disk.resolve("slipway.db");
    try (Logbook slipway = Logbook.open(file, CLOCK)) {
      new Boathouse(slipway).burn("clean");
      Files.copy(file, there);
      Files.copy(folder.resolve("slipway.db-wal"), disk.resolve("slipway.db-wal"));
    }
    return there;
  }

  @Test
  void a_merge_from_a_read_only_disk_has_what_only_the_write_ahead_file_holds() throws Exception {
    Path there = slipwayAsItIsRecordedIn();
    byte[] rows = Files.readAllBytes(disk.resolve("slipway.db-wal"));
    assertThat(run("mount", "-o", "remount,ro", disk.toString())).isTrue();
    try (Logbook log = Logbook.open(folder.resolve("boathouse.db"), CLOCK)) {
      assertThat(Merge.into(log, "Ada").from(there, Resolution.UNDECIDED).patches()).isEqualTo(1);
      assertThat(log.check()).isEmpty();
    }
    assertThat(Files.readAllBytes(disk.resolve("slipway.db-wal"))).isEqualTo(rows);
    try (var files = Files.list(disk)) {
      assertThat(files).containsExactlyInAnyOrder(there, disk.resolve("slipway.db-wal"));
    }
  }

  @Test
  void a_damaged_log_on_a_read_only_disk_is_named_by_its_own_name() throws Exception {
    Path there = disk.resolve("slipway.db");
    Logbook.open(there, CLOCK).close();
    byte[] bytes = Files.readAllBytes(there);
    Arrays.fill(bytes, 8192, 40_000, (byte) 7);
    Files.write(there, bytes);
    assertThat(run("mount", "-o", "remount,ro", disk.toString())).isTrue();
    try (Logbook log = Logbook.open(folder.resolve("boathouse.db"), CLOCK)) {
      assertThatThrownBy(() -> Merge.into(log, "Ada").from(there, Resolution.UNDECIDED))
          .isInstanceOf(Refusal.class)
          .hasMessageStartingWith("The log %s is damaged (", there);
    }
  }
}
