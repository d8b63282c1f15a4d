package charline.log.upgrade;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * A place among the temporary files for a copy of a log. It is gone when this is closed, when the
 * program ends, and where the program was killed, when the next one needs such a place: a lock that
 * dies with its program tells.
 */
public final class TemporaryCopy implements AutoCloseable {
  private static final String PREFIX = "charline-log-";
  private static final String LOCK = "in-use";

  /** Those of this program: to look at their locks would let go of them. */
  private static final Set<Path> OURS = ConcurrentHashMap.newKeySet();

  private static final List<String> FILES =
      List.of("log.db", "log.db-wal", "log.db-shm", "log.db-journal", LOCK);

  private final Path folder;
  private final FileChannel channel;
  private final Thread atTheEnd = new Thread(this::remove);

  private TemporaryCopy(Path folder, FileChannel channel) {
    this.folder = folder;
    this.channel = channel;
  }

  /** A new place, readable by its owner alone. */
  public static TemporaryCopy place() throws IOException {
    clear(Path.of(System.getProperty("java.io.tmpdir")));
    Path folder = Files.createTempDirectory(PREFIX);
    OURS.add(folder);
    FileChannel channel =
        FileChannel.open(
            folder.resolve(LOCK), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    channel.lock();
    TemporaryCopy copy = new TemporaryCopy(folder, channel);
    Runtime.getRuntime().addShutdownHook(copy.atTheEnd);
    return copy;
  }

  /** Where the copy is to lie. */
  public Path file() {
    return folder.resolve(FILES.get(0));
  }

  /** Takes away what killed programs left. */
  static void clear(Path temporary) {
    try (DirectoryStream<Path> left = Files.newDirectoryStream(temporary, PREFIX + "*")) {
      for (Path folder : left) {
        if (!OURS.contains(folder) && isLeft(folder)) {
          remove(folder);
        }
      }
    } catch (IOException e) {
      return; // the system clears them some day
    }
  }

  private static boolean isLeft(Path folder) {
    try (FileChannel channel = FileChannel.open(folder.resolve(LOCK), StandardOpenOption.WRITE);
        FileLock lock = channel.tryLock()) {
      return lock != null;
    } catch (IOException | OverlappingFileLockException e) {
      return false; // somebody else's, in use here, or just being made
    }
  }

  private void remove() {
    try {
      channel.close();
    } catch (IOException e) {
      return;
    }
    remove(folder);
    OURS.remove(folder);
  }

  private static void remove(Path folder) {
    try {
      for (String name : FILES) {
        Files.deleteIfExists(folder.resolve(name));
      }
      Files.deleteIfExists(folder);
    } catch (IOException e) {
      return; // the system clears it some day
    }
  }

  @Override
  public void close() {
    remove();
    try {
      Runtime.getRuntime().removeShutdownHook(atTheEnd);
    } catch (IllegalStateException e) {
      return; // the program is ending
    }
  }
}
