package charline.log.database;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.ReentrantLock;

/** Files that nobody but their owner may read, and that appear whole or not at all. */
public final class PrivateFile {
  /** File locks are between processes; threads of this one take turns here. */
  private static final ReentrantLock TURN = new ReentrantLock();

  /** What is gone when the program is stopped before it is finished. */
  private static final Set<Path> UNFINISHED = ConcurrentHashMap.newKeySet();

  private static final List<String> ENDINGS = List.of("", "-journal", "-wal", "-shm");

  static {
    Runtime.getRuntime().addShutdownHook(new Thread(() -> UNFINISHED.forEach(PrivateFile::delete)));
  }

  private PrivateFile() {}

  /**
   * Makes such a file for work that is to be moved into place when it is finished. Should the
   * program be stopped before, as by Ctrl-C, the file goes.
   */
  public static void begin(Path aside) throws IOException {
    UNFINISHED.add(aside);
    create(aside);
  }

  /** Takes such a file away if it is still there, with what SQLite laid beside it. */
  public static void discard(Path aside) {
    delete(aside);
    UNFINISHED.remove(aside);
  }

  private static void delete(Path aside) {
    for (String ending : ENDINGS) {
      try {
        Files.deleteIfExists(aside.resolveSibling(aside.getFileName() + ending));
      } catch (IOException e) {
        continue; // what is left over is no log and carries a name of its own
      }
    }
  }

  /** Gives a file a second name, and fails where that name is taken. */
  @FunctionalInterface
  interface Naming {
    void name(Path name, Path file) throws IOException;
  }

  /**
   * Makes an empty file that only its owner may read or write, where the disk knows owners.
   *
   * @throws FileAlreadyExistsException if something is there
   */
  public static void create(Path file) throws IOException {
    if (Files.getFileStore(file.toAbsolutePath().getParent()).supportsFileAttributeView("posix")) {
      Files.createFile(
          file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
    } else {
      Files.createFile(file);
    }
  }

  /**
   * Moves a finished file to its name, and never over another: of several that come at once, the
   * first has the name. When this returns, the name is on the disk too.
   *
   * @param aside in the same folder
   * @throws FileAlreadyExistsException if something has that name
   */
  public static void place(Path aside, Path name) throws IOException {
    place(aside, name, Files::createLink);
  }

  static void place(Path aside, Path name, Naming naming) throws IOException {
    try {
      naming.name(name, aside);
      Files.delete(aside);
    } catch (FileAlreadyExistsException e) {
      throw e;
    } catch (UnsupportedOperationException | FileSystemException e) {
      moveInTurn(aside, name); // a disk where a file has one name only
    }
    force(name.toAbsolutePath().getParent());
  }

  private static void moveInTurn(Path aside, Path name) throws IOException {
    Path lock = name.resolveSibling(name.getFileName() + "-placing");
    TURN.lock();
    try (FileChannel channel =
        FileChannel.open(lock, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
      channel.lock();
      Files.move(aside, name); // which looks first, and nobody comes between
    } finally {
      Files.deleteIfExists(lock);
      TURN.unlock();
    }
  }

  /** Writes the names in a folder to the disk, where the system lets a folder be opened. */
  private static void force(Path folder) {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException e) {
      return; // Windows writes names by itself
    }
  }
}
