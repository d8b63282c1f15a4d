package charline.log.upgrade;

import static charline.log.Boathouse.CLOCK;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import charline.log.Boathouse;
import charline.log.Filter;
import charline.log.Logbook;
import charline.log.Photo;
import charline.refusal.Refusal;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Copies of a log that its own bench holds open, its newest patches still in its {@code -wal}. */
class PlainCopyTest {
  @TempDir Path folder;
  private Path there;
  private Path copy;
  private Logbook slipway;
  private Boathouse bench;

  @BeforeEach
  void open() throws IOException {
    there = Files.createDirectory(folder.resolve("slipway")).resolve("slipway.db");
    copy = Files.createDirectory(folder.resolve("copies")).resolve("other.db");
    slipway = Logbook.open(there, CLOCK);
    bench = new Boathouse(slipway);
    bench.burn("clean");
    bench.burn("tint");
  }

  @AfterEach
  void close() {
    slipway.close();
  }

  private static List<String> contents(Path folder) throws IOException {
    List<String> contents = new ArrayList<>();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.sorted().toList()) {
        contents.add(file.getFileName() + " " + Photo.sha256(Files.readAllBytes(file)));
      }
    }
    return contents;
  }

  private void holdsAllThatWasBurned() {
    LogVersion.inspect(copy);
    try (Logbook copied = Logbook.openExisting(copy, CLOCK)) {
      assertThat(copied.patches(Filter.ALL)).isEqualTo(slipway.patches(Filter.ALL));
      assertThat(copied.check()).isEmpty();
    }
  }

  @Test
  void a_copy_has_what_only_the_write_ahead_file_holds_and_the_log_stays_as_it_is()
      throws IOException {
    List<String> before = contents(there.getParent());
    PlainCopy.write(there, copy);
    assertThat(contents(there.getParent())).isEqualTo(before);
    holdsAllThatWasBurned();
    assertThat(slipway.patches(Filter.ALL)).hasSize(2);
  }

  @Test
  void a_copy_of_a_write_protected_log_can_be_brought_up_to_date() throws IOException {
    Files.setPosixFilePermissions(there, PosixFilePermissions.fromString("r--r--r--"));
    PlainCopy.write(there, copy);
    assertThat(Files.getPosixFilePermissions(copy)).contains(PosixFilePermission.OWNER_WRITE);
  }

  @Test
  void a_link_to_a_log_finds_the_write_ahead_file_beside_the_log_itself() throws IOException {
    PlainCopy.write(Files.createSymbolicLink(folder.resolve("link.db"), there), copy);
    holdsAllThatWasBurned();
  }

  @Test
  void a_copy_torn_by_somebody_who_records_meanwhile_is_taken_again() throws IOException {
    List<Path> copied = new ArrayList<>();
    PlainCopy.write(
        there,
        copy,
        (from, to) -> {
          PlainCopy.bytes(from, to);
          if (copied.isEmpty()) {
            bench.burn("char");
          }
          copied.add(from);
        });
    assertThat(slipway.patches(Filter.ALL)).hasSize(3);
    holdsAllThatWasBurned();
  }

  @Test
  void a_file_that_its_bench_takes_away_meanwhile_is_no_failure() throws IOException {
    List<Path> copied = new ArrayList<>();
    PlainCopy.write(
        there,
        copy,
        (from, to) -> {
          if (copied.isEmpty()) {
            slipway.close(); // which writes all into the log and takes the write-ahead file away
          }
          copied.add(from);
          PlainCopy.bytes(from, to);
        });
    slipway = Logbook.openExisting(there, CLOCK);
    assertThat(slipway.patches(Filter.ALL)).hasSize(2);
    holdsAllThatWasBurned();
  }

  @Test
  void a_log_that_never_lies_still_is_refused_and_no_copy_stays() throws IOException {
    assertThatThrownBy(
            () ->
                PlainCopy.write(
                    there,
                    copy,
                    (from, to) -> {
                      PlainCopy.bytes(from, to);
                      bench.burn("clean");
                    }))
        .isInstanceOf(Refusal.class)
        .hasMessage(
            "The log %s must not change while it is copied, but somebody recorded in it on each of"
                + " 5 tries; try again when nobody does.",
            there);
    assertThat(contents(copy.getParent())).isEmpty();
  }

  @Test
  void what_is_there_already_is_not_overwritten() throws IOException {
    Files.writeString(copy, "a note");
    assertThatThrownBy(() -> PlainCopy.write(there, copy))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThat(copy).hasContent("a note");
  }
}
