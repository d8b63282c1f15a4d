package charline.log.upgrade;

import charline.log.database.Upgrade;
import charline.refusal.Refusal;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantLock;

/**
 * Brings an older log up to date, one program at a time. The log as it was is kept first, so that a
 * step that goes wrong loses nothing.
 */
public final class Upgrading {
  /** File locks are between processes; threads of this one take turns here. */
  private static final ReentrantLock TURN = new ReentrantLock();

  private Upgrading() {}

  /** Does nothing to a log that another program has brought up to date meanwhile. */
  public static Optional<Upgrade> of(Path file) {
    Path lock = file.resolveSibling(file.getFileName() + "-upgrading");
    TURN.lock();
    try (FileChannel channel =
        FileChannel.open(lock, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
      channel.lock();
      return locked(file);
    } catch (IOException e) {
      throw Refusal.data(
          "The log %s must be upgraded, but no file can be created in its folder (%s); it was not changed. Make the folder writable."
              .formatted(file, e.getMessage()),
          e);
    } finally {
      remove(lock);
      TURN.unlock();
    }
  }

  private static Optional<Upgrade> locked(Path file) {
    int version = LogVersion.inspect(file);
    if (version == Migrations.NEWEST) {
      return Optional.empty();
    }
    Path kept = LogCopy.keepBeforeUpgrade(file, version);
    Migrations.apply(file);
    return Optional.of(new Upgrade(version, Migrations.NEWEST, kept));
  }

  private static void remove(Path lock) {
    try {
      Files.deleteIfExists(lock);
    } catch (IOException e) {
      // Empty, and used again by the next upgrade.
    }
  }
}
