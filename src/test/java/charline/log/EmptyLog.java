package charline.log;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;

/**
 * Empty logs of the current version. One is made, which takes all migrations, and the others are
 * copies of it; that a new log is made as it should be is for {@link LogFileTest}.
 */
public final class EmptyLog {
  private static byte[] empty;

  private EmptyLog() {}

  /** Opens an empty log in a file that is not there yet. */
  public static Logbook open(Path file, Clock clock) {
    try {
      Files.write(file, empty(), StandardOpenOption.CREATE_NEW);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return Logbook.open(file, clock);
  }

  private static synchronized byte[] empty() throws IOException {
    if (empty == null) {
      Path folder = Files.createTempDirectory("log");
      Path file = folder.resolve("boathouse.db");
      Logbook.open(file, Clock.systemUTC()).close();
      empty = Files.readAllBytes(file);
      Files.delete(file);
      Files.delete(folder);
    }
    return empty;
  }
}
