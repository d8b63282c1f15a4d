package charline.log;

import charline.log.database.Database;
import charline.log.database.PrivateFile;
import charline.log.database.SqlFailures;
import charline.log.database.SqliteFile;
import charline.log.database.Upgrade;
import charline.log.upgrade.LogCopy;
import charline.log.upgrade.LogVersion;
import charline.log.upgrade.Migrations;
import charline.log.upgrade.PlainCopy;
import charline.log.upgrade.TemporaryCopy;
import charline.log.upgrade.Upgrading;
import charline.refusal.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * Opens the file of a log. Whatever is not a sound log of a version that this program knows is
 * refused before a byte of it is touched.
 */
public final class LogFile {
  /** Application id in the file header of every log: the letters "chrl". */
  public static final int APPLICATION_ID = 0x6368726C;

  private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.ISO_8859_1);
  private static final int HEADER_BYTES = 100;
  private static final int APPLICATION_ID_AT = 68;

  private LogFile() {}

  /** Opens a log that is there. */
  public static Database openExisting(Path file) {
    requireLog(file, "another log");
    if (!isWritable(file)) {
      throw Refusal.data(
          "The log %s is write-protected; make it writable or choose another log.".formatted(file));
    }
    return connectChecked(file, false);
  }

  /**
   * Opens a log that is there and is only read. One that cannot be written to is copied first,
   * since SQLite could not keep others from writing meanwhile.
   *
   * @param trusting true if the log may have other rules than those of its version
   */
  static Database openToRead(Path file, boolean trusting) {
    requireLog(file, "another log");
    return isWritable(file) && Files.isWritable(file.toAbsolutePath().getParent())
        ? connectChecked(file, trusting)
        : readCopy(file, trusting);
  }

  private static Database readCopy(Path file, boolean trusting) {
    TemporaryCopy copy = null;
    boolean open = false;
    try {
      copy = TemporaryCopy.place();
      Path place = copy.file();
      PlainCopy.write(file, place);
      Connection connection = connect(place);
      try {
        if (LogVersion.of(connection, place, file, trusting) < Migrations.NEWEST) {
          connection.close();
          LogVersion.inspect(place, file);
          Migrations.apply(place);
          connection = connect(place);
        }
        try (Statement statement = connection.createStatement()) {
          statement.execute("PRAGMA query_only = ON"); // what is recorded here would be lost
        }
        Database database = new Database(file, connection, Optional.empty(), place, copy::close);
        open = true;
        return database;
      } finally {
        if (!open) {
          close(connection);
        }
      }
    } catch (SQLException e) {
      throw SqlFailures.of(e, file);
    } catch (IOException e) {
      throw Refusal.data(
          "The log %s is write-protected, and it cannot be copied for reading (%s); make it writable or make room for temporary files."
              .formatted(file, e.getMessage()),
          e);
    } finally {
      if (!open && copy != null) {
        copy.close();
      }
    }
  }

  /**
   * Refuses what is no log.
   *
   * @param another what a person may name instead, as a clause
   */
  public static void requireLog(Path file, String another) {
    if (!Files.exists(file)) {
      throw Refusal.data(
          "There is no log at %s yet; record a patch or import a trial sheet first, or choose another log."
              .formatted(file));
    }
    if (Files.isDirectory(file)) {
      throw Refusal.data("%s is a folder; choose a file for the log.".formatted(file));
    }
    if (!Files.isRegularFile(file)) {
      throw Refusal.data(
          "%s is a device or a pipe, not a file; choose a file for the log.".formatted(file));
    }
    checkHeader(file, another);
  }

  /** Opens a log, making it and its folders where there is none. */
  public static Database open(Path file) {
    if (!Files.exists(file)) {
      create(file);
    }
    return openExisting(file);
  }

  private static void checkHeader(Path file, String another) {
    byte[] header;
    try (InputStream in = Files.newInputStream(file)) {
      header = in.readNBytes(HEADER_BYTES);
    } catch (IOException e) {
      throw Refusal.data(
          "The log %s cannot be read (%s); check its permissions or choose %s."
              .formatted(file, e.getMessage(), another),
          e);
    }
    boolean sqlite =
        header.length >= MAGIC.length
            && Arrays.equals(header, 0, MAGIC.length, MAGIC, 0, MAGIC.length);
    if (!sqlite) {
      throw Refusal.data(
          "%s is not a charline log, or its beginning is damaged; it was not changed. Choose %s, or restore the latest backup."
              .formatted(file, another));
    }
    if (header.length < HEADER_BYTES) {
      throw Refusal.data(
          SqlFailures.damage(file, "it ends after %d bytes".formatted(header.length)));
    }
    if (ByteBuffer.wrap(header).getInt(APPLICATION_ID_AT) != APPLICATION_ID) {
      throw Refusal.data(
          "%s is an SQLite file of another program, not a charline log; it was not changed. Choose %s."
              .formatted(file, another));
    }
  }

  /** Write protection counts even for a user who could get round it. */
  private static boolean isWritable(Path file) {
    boolean writable = Files.isWritable(file);
    try {
      Set<PosixFilePermission> permissions = Files.getPosixFilePermissions(file);
      writable &=
          permissions.contains(PosixFilePermission.OWNER_WRITE)
              || permissions.contains(PosixFilePermission.GROUP_WRITE)
              || permissions.contains(PosixFilePermission.OTHERS_WRITE);
    } catch (IOException | UnsupportedOperationException e) {
      // No such permissions on this file system: what isWritable says stands.
    }
    return writable;
  }

  private static Database connectChecked(Path file, boolean trusting) {
    Optional<Upgrade> upgrade = Optional.empty();
    Connection connection = connect(file);
    boolean open = false;
    try {
      if (LogVersion.of(connection, file, file, trusting) < Migrations.NEWEST) {
        connection.close();
        upgrade = Upgrading.of(file);
        connection = connect(file);
      }
      try (Statement statement = connection.createStatement()) {
        writeAhead(statement);
      }
      open = true;
      return new Database(file, connection, upgrade);
    } catch (SQLException e) {
      throw SqlFailures.of(e, file);
    } finally {
      if (!open) {
        close(connection);
      }
    }
  }

  private static Connection connect(Path file) {
    try {
      return SqliteFile.source(file, false).getConnection();
    } catch (SQLException e) {
      throw SqlFailures.of(e, file);
    }
  }

  /** After a failure, which must not be hidden by a second one. */
  private static void close(Connection connection) {
    try {
      connection.close();
    } catch (SQLException e) {
      return;
    }
  }

  /**
   * Lets others read while one writes. A log that nobody set so yet is changed once, for which
   * SQLite wants it alone and does not wait by itself.
   */
  private static void writeAhead(Statement statement) throws SQLException {
    long end = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(SqliteFile.BUSY_MILLISECONDS);
    while (true) {
      try {
        statement.execute("PRAGMA journal_mode = WAL");
        return;
      } catch (SQLException e) {
        if (!SqlFailures.busy(e) || System.nanoTime() > end) {
          throw e;
        }
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(10));
      }
    }
  }

  /** Built aside and then moved into place, so that a half-made log is never found. */
  private static void create(Path file) {
    Path absolute = file.toAbsolutePath();
    Path aside = absolute.resolveSibling(absolute.getFileName() + ".new-" + UUID.randomUUID());
    try {
      LogCopy.makeFolders(file);
      PrivateFile.begin(aside);
      Migrations.apply(aside);
      PrivateFile.place(aside, absolute);
    } catch (FileAlreadyExistsException e) {
      if (!Files.isRegularFile(absolute)) {
        throw LogCopy.cannotCreate(file, e);
      }
      // Another program made the log at the same time; that one is used.
    } catch (IOException e) {
      throw LogCopy.cannotCreate(file, e);
    } finally {
      PrivateFile.discard(aside);
    }
  }
}
