package charline.log.merge;

import charline.log.LogFile;
import charline.log.upgrade.LogCopy;
import charline.log.upgrade.LogVersion;
import charline.log.upgrade.Migrations;
import charline.log.upgrade.PlainCopy;
import charline.log.upgrade.TemporaryCopy;
import charline.refusal.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Function;

/** A copy of another log in the version of this program; the other log is left as it is. */
final class ReadableCopy {
  private ReadableCopy() {}

  /** Runs work on a copy of a log that this program can read, and takes the copy away again. */
  static <T> T of(Path log, Function<Path, T> work) {
    try (TemporaryCopy place = TemporaryCopy.place()) {
      copyUpgraded(log, place.file());
      return work.apply(place.file());
    } catch (IOException e) {
      throw Refusal.data(
          "The log %s cannot be copied for reading (%s); check its permissions and the free space on this disk."
              .formatted(log, e.getMessage()),
          e);
    }
  }

  private static void copyUpgraded(Path other, Path copy) throws IOException {
    if (!Files.exists(other)) {
      throw Refusal.data(
          "There is no log at %s; give the file of another bench's log.".formatted(other));
    }
    LogFile.requireLog(other, "the file of another bench's log");
    Path real = other.toRealPath();
    if (Files.isWritable(real) && Files.isWritable(real.getParent())) {
      LogVersion.inspect(other);
      LogCopy.write(other, copy);
    } else {
      PlainCopy.write(other, copy);
    }
    if (LogVersion.inspect(copy, other) < Migrations.NEWEST) {
      Migrations.apply(copy);
    }
  }
}
