package charline.log.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PrivateFileTest {
  private static final int AT_ONCE = 6;
  private static final int ROUNDS = 60;

  @TempDir Path folder;

  private static void withoutLinks(Path name, Path file) throws IOException {
    throw new FileSystemException(file.toString(), name.toString(), "Operation not permitted");
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void of_files_that_come_to_one_name_at_once_the_first_has_it_and_none_is_written_over(
      boolean links) throws Exception {
    ExecutorService all = Executors.newFixedThreadPool(AT_ONCE);
    try {
      for (int round = 0; round < ROUNDS; round++) {
        Path name = folder.resolve("log-%d.db".formatted(round));
        CyclicBarrier together = new CyclicBarrier(AT_ONCE);
        List<Callable<String>> placing = new ArrayList<>();
        for (int i = 0; i < AT_ONCE; i++) {
          String word = "bench " + i;
          Path aside = Files.writeString(folder.resolve("aside-" + i), word);
          placing.add(
              () -> {
                together.await();
                try {
                  PrivateFile.place(
                      aside, name, links ? Files::createLink : PrivateFileTest::withoutLinks);
                  return word;
                } catch (FileAlreadyExistsException e) {
                  Files.delete(aside);
                  return "";
                }
              });
        }
        List<String> placed = new ArrayList<>();
        for (Future<String> one : all.invokeAll(placing)) {
          placed.add(one.get());
        }
        placed.removeIf(String::isEmpty);
        assertThat(placed).as("who was told that the name is theirs").hasSize(1);
        assertThat(name).hasContent(placed.get(0));
      }
    } finally {
      all.shutdown();
    }
    try (var files = Files.list(folder)) {
      assertThat(files).hasSize(ROUNDS);
    }
  }

  @Test
  void a_name_that_is_taken_is_refused_and_the_file_aside_stays() throws IOException {
    Path name = Files.writeString(folder.resolve("log.db"), "precious");
    Path aside = Files.writeString(folder.resolve("aside"), "new");
    assertThatThrownBy(() -> PrivateFile.place(aside, name))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThatThrownBy(() -> PrivateFile.place(aside, name, PrivateFileTest::withoutLinks))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThat(name).hasContent("precious");
    assertThat(aside).exists();
  }

  /** Begins a file and works on it for ever. */
  static final class Beginner {
    private Beginner() {}

    public static void main(String[] args) throws IOException {
      PrivateFile.begin(Path.of(args[0]));
      LockSupport.park();
    }
  }

  @Test
  void a_file_that_is_not_finished_goes_with_a_program_that_is_stopped() throws Exception {
    Path aside = folder.resolve("log.db.part");
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                Beginner.class.getName(),
                aside.toString())
            .inheritIO()
            .start();
    while (process.isAlive() && !Files.exists(aside)) {
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(5));
    }
    assertThat(aside).exists();
    process.destroy();
    process.waitFor();
    assertThat(aside).doesNotExist();
  }
}
