package charline.log.upgrade;

import charline.log.database.PrivateFile;
import charline.refusal.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * Copies a log from where this program may not write, and where SQLite could therefore not keep
 * others from writing meanwhile: file by file, and again if the log did not lie still.
 */
public final class PlainCopy {
  /**
   * The log and the files that SQLite takes in when it opens a log: committed rows that are not yet
   * in it, or what undoes a change that was cut off. The index {@code -shm} is made anew.
   */
  private static final List<String> ENDINGS = List.of("", "-wal", "-journal");

  private static final int TRIES = 5;
  private static final int PAUSE_MILLISECONDS = 100;

  private PlainCopy() {}

  /** Copies one file to a place where nothing is. */
  @FunctionalInterface
  interface Copying {
    void copy(Path from, Path to) throws IOException;
  }

  /** What tells that a file was written to or replaced. */
  private record State(long bytes, FileTime written, Optional<Object> key) {}

  /**
   * Writes the copy, with its further files beside it under its own name.
   *
   * @throws FileAlreadyExistsException if something is there already
   * @throws Refusal if somebody writes to the log again and again
   */
  public static void write(Path log, Path copy) throws IOException {
    write(log, copy, PlainCopy::bytes);
  }

  /**
   * @param copying how a single file is copied
   */
  static void write(Path log, Path copy, Copying copying) throws IOException {
    if (Files.exists(copy)) {
      throw new FileAlreadyExistsException(copy.toString());
    }
    Path file = log.toRealPath(); // beside a link lies nothing
    for (int i = 0; i < TRIES; i++) {
      if (i > 0) {
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(PAUSE_MILLISECONDS));
      }
      if (lay(file, copy, copying)) {
        return;
      }
    }
    throw Refusal.data(
        "The log %s must not change while it is copied, but somebody recorded in it on each of %d tries; try again when nobody does."
            .formatted(log, TRIES));
  }

  /** Copies once; false, and no copy left, if the log changed meanwhile. */
  private static boolean lay(Path log, Path copy, Copying copying) throws IOException {
    List<Optional<State>> before = states(log);
    boolean whole = false;
    try {
      for (int i = 0; i < ENDINGS.size(); i++) {
        if (before.get(i).isPresent()) {
          copying.copy(beside(log, ENDINGS.get(i)), beside(copy, ENDINGS.get(i)));
        }
      }
      whole = states(log).equals(before);
    } catch (NoSuchFileException e) {
      whole = false; // whoever closes the log last takes its write-ahead file away
    } finally {
      if (!whole) {
        for (String ending : ENDINGS) {
          Files.deleteIfExists(beside(copy, ending));
        }
      }
    }
    return whole;
  }

  private static List<Optional<State>> states(Path log) throws IOException {
    List<Optional<State>> states = new ArrayList<>();
    for (String ending : ENDINGS) {
      states.add(state(beside(log, ending)));
    }
    return states;
  }

  private static Optional<State> state(Path file) throws IOException {
    try {
      BasicFileAttributes now = Files.readAttributes(file, BasicFileAttributes.class);
      return Optional.of(
          new State(now.size(), now.lastModifiedTime(), Optional.ofNullable(now.fileKey())));
    } catch (NoSuchFileException e) {
      return Optional.empty();
    }
  }

  private static Path beside(Path log, String ending) {
    return log.resolveSibling(log.getFileName() + ending);
  }

  /** Copies the bytes alone: write protection must not come along. */
  static void bytes(Path from, Path to) throws IOException {
    PrivateFile.create(to);
    try (InputStream in = Files.newInputStream(from);
        OutputStream out = Files.newOutputStream(to)) {
      in.transferTo(out);
    }
  }
}
