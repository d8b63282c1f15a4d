package charline.log.upgrade;

import charline.log.database.PrivateFile;
import charline.log.database.SqlFailures;
import charline.log.database.SqliteFile;
import charline.refusal.Refusal;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.UUID;

/** Consistent copies of a log, also while others record in it. */
public final class LogCopy {
  private LogCopy() {}

  /** Writes a backup to a new file. */
  public static void backup(Path log, Path copy) {
    try {
      write(log, copy);
    } catch (FileAlreadyExistsException e) {
      throw Refusal.usage(
          "%s already exists; choose a new file for the backup.".formatted(copy), e);
    } catch (IOException e) {
      throw Refusal.data(
          "The backup %s cannot be written (%s); check the folder or choose another file."
              .formatted(copy, e.getMessage()),
          e);
    }
  }

  /** Whether two names are of one file. */
  public static boolean same(Path one, Path other) {
    try {
      return Files.exists(one) && Files.exists(other) && Files.isSameFile(one, other);
    } catch (IOException e) {
      return false; // opening it will say what is the matter
    }
  }

  /**
   * Writes a copy that is found whole or not at all: made aside, on the disk, then moved into
   * place.
   *
   * @throws FileAlreadyExistsException if something is there already
   */
  public static void write(Path log, Path copy) throws IOException {
    Path place = copy.toAbsolutePath();
    if (Files.exists(place)) {
      throw new FileAlreadyExistsException(copy.toString());
    }
    makeFolders(place);
    Path aside = place.resolveSibling(place.getFileName() + ".part-" + UUID.randomUUID());
    try {
      PrivateFile.begin(aside);
      vacuumInto(log, aside);
      try (FileChannel channel = FileChannel.open(aside, StandardOpenOption.WRITE)) {
        channel.force(true);
      }
      PrivateFile.place(aside, place);
    } finally {
      PrivateFile.discard(aside);
    }
  }

  private static void vacuumInto(Path log, Path copy) {
    try (Connection connection = SqliteFile.source(log, false).getConnection();
        PreparedStatement statement = connection.prepareStatement("VACUUM INTO ?")) {
      statement.setString(1, copy.toString());
      statement.executeUpdate();
    } catch (SQLException e) {
      throw SqlFailures.ofCopying(e, log, copy);
    }
  }

  /** Keeps a log as it is before its schema changes, beside it, under a name that says so. */
  static Path keepBeforeUpgrade(Path log, int version) {
    String name = log.getFileName().toString();
    int dot = name.lastIndexOf('.');
    String stem = dot > 0 ? name.substring(0, dot) : name;
    String ending = dot > 0 ? name.substring(dot) : "";
    for (int i = 1; ; i++) {
      String number = i == 1 ? "" : "-" + i;
      Path copy =
          log.resolveSibling("%s-of-version-%d%s%s".formatted(stem, version, number, ending));
      try {
        write(log, copy);
        return copy;
      } catch (FileAlreadyExistsException e) {
        // An earlier one is kept too.
      } catch (IOException e) {
        throw Refusal.data(
            "The log %s must be copied before it is upgraded, and copying failed (%s); it was not changed. Free some space, or make its folder writable."
                .formatted(log, e.getMessage()),
            e);
      }
    }
  }

  /** Makes the folders that a file is to lie in. */
  public static void makeFolders(Path file) {
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
    } catch (IOException e) {
      throw cannotCreate(file, e);
    }
  }

  public static Refusal cannotCreate(Path file, IOException e) {
    return Refusal.data(
        "%s cannot be created (%s); check the folder or choose another file."
            .formatted(file, e.getClass().getSimpleName() + " on " + e.getMessage()),
        e);
  }
}
