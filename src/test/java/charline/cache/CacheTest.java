package charline.cache;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.TreeSet;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is kept is what was computed, or it is computed again. */
class CacheTest {
  @TempDir Path folder;

  private final AtomicInteger computed = new AtomicInteger();

  enum Word {
    CLEAN,
    CHAR {
      @Override
      public String toString() {
        return "char";
      }
    }
  }

  sealed interface Found {}

  record Box(double low, double high, Word word) implements Found {}

  record Nothing() implements Found {}

  record Board(UUID id, String name) {}

  record Answer(
      int count,
      long seed,
      boolean sure,
      String text,
      Board board,
      List<Found> found,
      Map<Word, TreeSet<Double>> tried,
      Optional<Word> word,
      OptionalDouble some,
      OptionalInt none,
      OffsetDateTime at,
      LocalDate day,
      Instant moment,
      Drawn draws) {}

  /** No record, like a posterior. */
  static final class Drawn {
    private final double[][] draws;

    Drawn(double[][] draws) {
      this.draws = draws;
    }

    record Parts(double[][] draws) {}

    @Override
    public boolean equals(Object other) {
      return other instanceof Drawn drawn && Arrays.deepEquals(draws, drawn.draws);
    }

    @Override
    public int hashCode() {
      return Arrays.deepHashCode(draws);
    }
  }

  private static final Board BOARD = new Board(new UUID(7, 7), "mill-lane-door");

  private Answer compute(Board board) {
    computed.incrementAndGet();
    Random random = new Random(5);
    double[] draws = random.doubles(3000).toArray();
    draws[1] = Double.NEGATIVE_INFINITY;
    draws[2] = -0.0;
    return new Answer(
        3,
        1L << 40,
        true,
        "board " + board.name(),
        board,
        List.of(new Box(0.1 + 0.2, Double.MIN_VALUE, Word.CHAR), new Nothing()),
        Map.of(Word.CLEAN, new TreeSet<>(List.of(1.5, 0.6))),
        Optional.of(Word.CLEAN),
        OptionalDouble.of(Math.PI),
        OptionalInt.empty(),
        OffsetDateTime.parse("2026-06-01T12:30:00.5+02:00"),
        LocalDate.of(2026, 6, 1),
        Instant.ofEpochSecond(9, 9),
        new Drawn(new double[][] {draws, {}}));
  }

  private Cache cache(long mostBytes) {
    return Cache.in(
        folder.resolve("fits"),
        List.of(
            new Form<>(
                Drawn.class,
                Drawn.Parts.class,
                d -> new Drawn.Parts(d.draws),
                p -> new Drawn(p.draws()))),
        mostBytes);
  }

  private Answer ask(Board board) {
    return ask(1 << 20, board);
  }

  private Answer ask(long mostBytes, Board board) {
    try (Cache cache = cache(mostBytes)) {
      return cache.get("answer", Basis.of(board, 5), Answer.class, () -> compute(board));
    }
  }

  private List<Path> files() throws IOException {
    try (Stream<Path> files = Files.list(folder.resolve("fits"))) {
      return files.sorted().toList();
    }
  }

  @Test
  void an_answer_is_computed_once_and_then_the_same_to_the_last_bit() {
    Answer first = ask(BOARD);
    Answer second = ask(BOARD);
    assertThat(computed).hasValue(1);
    assertThat(second).isEqualTo(first).isNotSameAs(first);
    assertThat(second.board()).as("what it was computed from is not made anew").isSameAs(BOARD);
  }

  @Test
  void another_argument_another_order_or_other_work_is_another_answer() {
    try (Cache cache = cache(1 << 20)) {
      List<Basis> bases =
          List.of(
              Basis.of(1, 2),
              Basis.of(2, 1),
              Basis.of(1).with(2),
              Basis.of(1, 2, "a"),
              Basis.of(1, 2, "b"),
              Basis.of(1, 2, List.of("a")),
              Basis.of(1.0, 2),
              Basis.of(0.0),
              Basis.of(-0.0),
              Basis.of(Map.of("a", 1, "b", 2)),
              Basis.of(Map.of("a", 2, "b", 1)),
              Basis.of(new Board(new UUID(1, 1), "x"), new Board(new UUID(1, 1), "y")),
              Basis.of(new Board(new UUID(1, 1), "x"), new Board(new UUID(1, 2), "y")));
      for (int k = 0; k < bases.size(); k++) {
        int number = k;
        assertThat(
                cache
                    .get("number", bases.get(k), Box.class, () -> new Box(number, 0, Word.CLEAN))
                    .low())
            .isEqualTo(number);
      }
      assertThat(
              cache.get("other", bases.get(0), Box.class, () -> new Box(99, 0, Word.CLEAN)).low())
          .isEqualTo(99);
    }
    try (Cache again = cache(1 << 20)) {
      assertThat(
              again
                  .get(
                      "number",
                      Basis.of(Map.of("b", 2, "a", 1)),
                      Box.class,
                      () -> new Box(-1, 0, Word.CLEAN))
                  .low())
          .as("the order of a map is chance")
          .isEqualTo(9);
    }
  }

  @Test
  void another_build_of_the_program_finds_nothing() {
    for (String build : List.of("one", "other", "one")) {
      try (Cache cache = cache(1 << 20).of(build)) {
        cache.get("answer", Basis.of(BOARD, 5), Answer.class, () -> compute(BOARD));
      }
    }
    assertThat(computed).hasValue(2);
  }

  @Test
  void ids_say_only_which_things_are_one() {
    ask(BOARD);
    Board same = new Board(new UUID(8, 8), BOARD.name());
    assertThat(ask(same).board()).isSameAs(same);
    assertThat(computed).hasValue(1);
  }

  @Test
  void names_that_it_was_computed_from_are_not_in_the_file() throws IOException {
    ask(BOARD);
    byte[] bytes = Files.readAllBytes(files().get(0));
    for (var charset : List.of(StandardCharsets.UTF_8, StandardCharsets.UTF_16BE)) {
      assertThat(new String(bytes, StandardCharsets.ISO_8859_1))
          .doesNotContain(new String("mill-lane".getBytes(charset), StandardCharsets.ISO_8859_1));
    }
  }

  /** Every length that it may be cut to, and single bits anywhere. */
  @Test
  void a_damaged_file_is_passed_over_and_written_anew() throws IOException {
    Answer sound = ask(BOARD);
    Path file = files().get(0);
    byte[] bytes = Files.readAllBytes(file);
    Random random = new Random(11);
    for (int n = 0; n < 150; n++) {
      byte[] damaged =
          n % 3 == 0 ? Arrays.copyOf(bytes, random.nextInt(bytes.length)) : bytes.clone();
      if (n % 3 != 0) {
        damaged[n < 100 ? n : random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
      }
      Files.write(file, damaged);
      int before = computed.get();
      assertThat(ask(BOARD)).as("damage %d", n).isEqualTo(sound);
      assertThat(computed.get()).as("damage %d", n).isEqualTo(before + 1);
      assertThat(Files.readAllBytes(file)).as("damage %d", n).isEqualTo(bytes);
    }
  }

  @Test
  void a_file_of_another_answer_is_no_answer() throws IOException {
    ask(BOARD);
    Path first = files().get(0);
    byte[] bytes = Files.readAllBytes(first);
    Board other = new Board(new UUID(9, 9), "hall-door");
    ask(other);
    Path second = files().stream().filter(f -> !f.equals(first)).findFirst().orElseThrow();
    Files.write(second, bytes);
    assertThat(ask(other).text()).isEqualTo("board hall-door");
    assertThat(computed).hasValue(3);
  }

  @Test
  void it_keeps_to_its_room_and_what_was_used_longest_ago_goes() throws IOException {
    ask(BOARD);
    long each = Files.size(files().get(0));
    Path foreign = Files.writeString(folder.resolve("fits").resolve("letter.txt"), "Dear Ada");
    List<Board> boards = new ArrayList<>();
    for (int k = 0; k < 9; k++) {
      Board board = new Board(new UUID(k, k), "board-" + k);
      boards.add(board);
      ask(4 * each, board);
      for (Path file : files()) {
        Files.setLastModifiedTime(
            file, FileTime.from(Files.getLastModifiedTime(file).toInstant().minusSeconds(7200)));
      }
      ask(4 * each, boards.get(0)); // so that this is always the one used last
    }
    long bytes = 0;
    for (Path file : files()) {
      bytes += file.equals(foreign) ? 0 : Files.size(file);
    }
    assertThat(bytes).isLessThanOrEqualTo(4 * each);
    assertThat(foreign).exists();
    int before = computed.get();
    ask(4 * each, boards.get(0));
    assertThat(computed.get()).as("still kept").isEqualTo(before);
    ask(4 * each, boards.get(1));
    assertThat(computed.get()).as("gone").isEqualTo(before + 1);
  }

  @Test
  void folder_and_files_are_their_owners_alone() throws IOException {
    assumeTrue(Files.getFileStore(folder).supportsFileAttributeView("posix"));
    ask(BOARD);
    Path fits = folder.resolve("fits");
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(fits)))
        .isEqualTo("rwx------");
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(files().get(0))))
        .isEqualTo("rw-------");

    Files.setPosixFilePermissions(fits, PosixFilePermissions.fromString("rwxrwx---"));
    assertThat(ask(BOARD)).isEqualTo(ask(BOARD));
    assertThat(computed).as("others could have written what is there").hasValue(3);
  }

  @Test
  void without_a_folder_to_write_into_answers_are_computed() throws IOException {
    Files.writeString(folder.resolve("fits"), "a file");
    assertThat(ask(BOARD)).isEqualTo(ask(BOARD));
    assertThat(computed).hasValue(2);
  }

  @Test
  void a_value_that_cannot_be_kept_is_an_answer_all_the_same() {
    record Odd(Thread thread) {}
    for (int k = 0; k < 2; k++) {
      try (Cache cache = cache(1 << 20)) {
        assertThat(
                cache
                    .get("odd", Basis.of(1), Odd.class, () -> new Odd(Thread.currentThread()))
                    .thread())
            .isSameAs(Thread.currentThread());
        assertThat(
                cache.get("odd", Basis.of(1, Thread.currentThread()), Word.class, () -> Word.CLEAN))
            .isEqualTo(Word.CLEAN);
      }
    }
  }

  @Test
  void a_moment_later_in_the_same_run_it_is_there_already() {
    try (Cache cache = cache(1 << 20)) {
      for (int k = 0; k < 20; k++) {
        cache.get("answer", Basis.of(BOARD, 5), Answer.class, () -> compute(BOARD));
      }
    }
    assertThat(computed).hasValue(1);
  }

  /** Fits hold megabytes each, and may be found faster than a slow disk takes them. */
  @Test
  void whoever_computes_waits_for_the_disk_when_many_values_wait() throws Exception {
    CountDownLatch slowDisk = new CountDownLatch(1);
    Form<Drawn, Drawn.Parts> slow =
        new Form<>(
            Drawn.class,
            Drawn.Parts.class,
            drawn -> {
              try {
                slowDisk.await();
              } catch (InterruptedException e) {
                throw new IllegalStateException(e);
              }
              return new Drawn.Parts(drawn.draws);
            },
            parts -> new Drawn(parts.draws()));
    Cache cache = Cache.in(folder.resolve("kept"), List.of(slow)).of("a build");
    Thread finding =
        new Thread(
            () -> {
              for (int k = 0; k < 100; k++) {
                cache.get("draws", Basis.of(k), Drawn.class, () -> new Drawn(new double[0][0]));
                computed.incrementAndGet();
              }
            });
    finding.start();
    while (finding.getState() != Thread.State.WAITING && finding.isAlive()) {
      Thread.onSpinWait();
    }
    assertThat(computed).hasValue(64);
    slowDisk.countDown();
    finding.join();
    cache.close();
    assertThat(computed).hasValue(100);
    try (Stream<Path> files = Files.list(folder.resolve("kept"))) {
      assertThat(files).hasSize(100);
    }
  }
}
