package charline.log;

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
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.SynchronousMode;
import org.sqlite.SQLiteConfig.TempStore;
import org.sqlite.SQLiteDataSource;
import org.sqlite.SQLiteOpenMode;

/**
 * Opens the file of a log. Whatever is not a sound log of a version that this program knows is
 * refused before a byte of it is touched.
 */
final class LogFile {
  /** Stands in the file header of every log: the letters "chrl". */
  static final int APPLICATION_ID = 0x6368726C;

  /** The newest migration in db/migration. */
  static final int SCHEMA_VERSION = 9;

  private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.ISO_8859_1);
  private static final int HEADER_BYTES = 100;
  private static final int APPLICATION_ID_AT = 68;
  private static final int BUSY_MILLISECONDS = 5000;

  /** 64 MB at most, taken as they are used: a large import keeps its indexes in memory. */
  private static final int CACHE_PAGES = 16_384;

  /**
   * Up to this size a log is read whole before anything is done with it. A larger one, full of
   * photos, would keep every command waiting; there damage shows when it is read, and in a check.
   */
  private static final long READ_WHOLE_BYTES = 16 << 20;

  private LogFile() {}

  /** Opens a log that is there. */
  static Store openExisting(Path file) {
    requireLog(file, "another with --log");
    checkWritable(file);
    return connectChecked(file);
  }

  /**
   * @param another what a person may name instead, as a clause
   */
  private static void requireLog(Path file, String another) {
    if (!Files.exists(file)) {
      throw Refusal.data(
          "There is no log at %s yet; record a patch or import a trial sheet first, or name another with --log."
              .formatted(file));
    }
    if (Files.isDirectory(file)) {
      throw Refusal.data("%s is a folder; name a file for the log.".formatted(file));
    }
    checkHeader(file, another);
  }

  /** Opens a log, making it and its folders where there is none. */
  static Store open(Path file) {
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
          "The log %s cannot be read (%s); check its permissions or name %s."
              .formatted(file, e.getMessage(), another),
          e);
    }
    boolean sqlite =
        header.length >= MAGIC.length
            && Arrays.equals(header, 0, MAGIC.length, MAGIC, 0, MAGIC.length);
    if (!sqlite) {
      throw Refusal.data(
          "%s is no charline log, or its beginning is damaged; it was left as it is. Name %s, or restore the latest backup."
              .formatted(file, another));
    }
    if (header.length < HEADER_BYTES) {
      throw Refusal.data(Refusals.damage(file, "it ends after %d bytes".formatted(header.length)));
    }
    if (ByteBuffer.wrap(header).getInt(APPLICATION_ID_AT) != APPLICATION_ID) {
      throw Refusal.data(
          "%s is an SQLite file of another program, not a charline log; it was left as it is. Name %s."
              .formatted(file, another));
    }
  }

  /** Write protection counts even for a user who could get round it. */
  private static void checkWritable(Path file) {
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
    if (!writable) {
      throw Refusal.data(
          "The log %s is write-protected; make it writable or name another with --log."
              .formatted(file));
    }
  }

  private static Store connectChecked(Path file) {
    Optional<Upgrade> upgrade = Optional.empty();
    Connection connection = connect(file);
    boolean open = false;
    try {
      if (version(connection, file) < SCHEMA_VERSION) {
        connection.close();
        upgrade = Upgrading.of(file);
        connection = connect(file);
      }
      try (Statement statement = connection.createStatement()) {
        writeAhead(statement);
      }
      open = true;
      return new Store(file, connection, upgrade);
    } catch (SQLException e) {
      throw Refusals.of(e, file);
    } finally {
      if (!open) {
        close(connection);
      }
    }
  }

  private static Connection connect(Path file) {
    try {
      return source(file, false).getConnection();
    } catch (SQLException e) {
      throw Refusals.of(e, file);
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

  /** Reads a small log whole and of a large one its version. */
  private static int version(Connection connection, Path file) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      if (file.toFile().length() <= READ_WHOLE_BYTES) {
        requireSound(statement, file);
      }
      return knownVersion(statement, file);
    }
  }

  /**
   * Lets others read while one writes. A log that nobody set so yet is changed once, for which
   * SQLite wants it alone and does not wait by itself.
   */
  private static void writeAhead(Statement statement) throws SQLException {
    long end = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(BUSY_MILLISECONDS);
    while (true) {
      try {
        statement.execute("PRAGMA journal_mode = WAL");
        return;
      } catch (SQLException e) {
        if (!Refusals.busy(e) || System.nanoTime() > end) {
          throw e;
        }
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(10));
      }
    }
  }

  /** A copy of another log, which itself is left as it is, in the version of this program. */
  static void copyUpgraded(Path other, Path copy) throws IOException {
    if (!Files.exists(other)) {
      throw Refusal.data(
          "There is no log at %s; name the file of another bench's log.".formatted(other));
    }
    requireLog(other, "the file of another bench's log");
    Path real = other.toRealPath();
    if (Files.isWritable(real) && Files.isWritable(real.getParent())) {
      inspect(other);
      LogCopy.write(other, copy);
    } else {
      PlainCopy.write(other, copy);
    }
    if (inspect(copy, other) < SCHEMA_VERSION) {
      migrate(copy);
    }
  }

  /** Reads the whole file; refuses a damaged or newer log and gives the version of a sound one. */
  static int inspect(Path file) {
    return inspect(file, file);
  }

  /**
   * @param known the file that a person knows this one by
   */
  private static int inspect(Path file, Path known) {
    try (Connection connection = source(file, false).getConnection();
        Statement statement = connection.createStatement()) {
      requireSound(statement, known);
      return knownVersion(statement, known);
    } catch (SQLException e) {
      throw Refusals.of(e, known);
    }
  }

  private static void requireSound(Statement statement, Path file) throws SQLException {
    String verdict = text(statement, "PRAGMA quick_check(1)");
    if (!verdict.equals("ok")) {
      throw Refusal.data(Refusals.damage(file, verdict.replaceAll("\\s+", " ")));
    }
  }

  /** Reads the table of versions alone; refuses a newer log. */
  private static int knownVersion(Statement statement, Path file) throws SQLException {
    String history = "SELECT count(*) FROM sqlite_schema WHERE name = 'flyway_schema_history'";
    if (text(statement, history).equals("0")) {
      throw Refusal.data(Refusals.damage(file, "its table of versions is missing"));
    }
    int version =
        Integer.parseInt(
            text(
                statement,
                "SELECT coalesce(max(CAST(version AS INTEGER)), 0) FROM flyway_schema_history WHERE"
                    + " success"));
    if (version > SCHEMA_VERSION) {
      throw Refusal.data(
          "The log %s comes from a newer charline (its version is %d, this one knows up to %d); it was left as it is. Update charline."
              .formatted(file, version, SCHEMA_VERSION));
    }
    return version;
  }

  static String sqliteVersion() {
    try (Connection connection = new SQLiteDataSource().getConnection();
        Statement statement = connection.createStatement()) {
      return text(statement, "SELECT sqlite_version()");
    } catch (SQLException e) {
      throw new IllegalStateException("SQLite must tell its version in memory.", e);
    }
  }

  private static String text(Statement statement, String sql) throws SQLException {
    try (ResultSet set = statement.executeQuery(sql)) {
      return set.next() ? String.valueOf(set.getString(1)) : "";
    }
  }

  /** Built aside and then moved into place, so that a half-made log is never found. */
  private static void create(Path file) {
    Path absolute = file.toAbsolutePath();
    Path aside = absolute.resolveSibling(absolute.getFileName() + ".new-" + UUID.randomUUID());
    try {
      makeFolders(file);
      Files.createFile(aside);
      migrate(aside);
      Files.move(aside, absolute);
    } catch (FileAlreadyExistsException e) {
      if (!Files.isRegularFile(absolute)) {
        throw cannotCreate(file, e);
      }
      // Another program made the log at the same time; that one is used.
    } catch (IOException e) {
      throw cannotCreate(file, e);
    } finally {
      remove(aside);
    }
  }

  /** Makes the folders that a file is to lie in. */
  static void makeFolders(Path file) {
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
    } catch (IOException e) {
      throw cannotCreate(file, e);
    }
  }

  private static Refusal cannotCreate(Path file, IOException e) {
    return Refusal.data(
        "%s cannot be made (%s); check the folder or name another file."
            .formatted(file, e.getClass().getSimpleName() + " on " + e.getMessage()),
        e);
  }

  private static void remove(Path aside) {
    try {
      Files.deleteIfExists(aside);
      Files.deleteIfExists(aside.resolveSibling(aside.getFileName() + "-journal"));
    } catch (IOException e) {
      // What is left over is no log and carries a name of its own.
    }
  }

  /** Brings the schema up to date, all pending steps in one transaction. */
  static void migrate(Path file) {
    try {
      flyway(file).migrate();
    } catch (FlywayException e) {
      for (Throwable cause = e; cause != null; cause = cause.getCause()) {
        if (cause instanceof SQLException sql) {
          throw Refusals.of(sql, file);
        }
      }
      throw Refusal.data(
          "The log %s cannot be brought up to date (%s); it was left as it was."
              .formatted(file, e.getMessage().lines().findFirst().orElse("")),
          e);
    }
  }

  private static Flyway flyway(Path file) {
    return Flyway.configure()
        .dataSource(source(file, true))
        .locations("classpath:db/migration")
        .group(true)
        .cleanDisabled(true)
        .load();
  }

  /** What differs between the steps that made this log and those that this program knows. */
  static List<String> strangeMigrations(Path file) {
    return flyway(file).validateWithResult().invalidMigrations.stream()
        .map(
            m ->
                "Step %s of the log's schema is not the one that this charline knows."
                    .formatted(m.version))
        .toList();
  }

  static SQLiteDataSource source(Path file, boolean migrating) {
    SQLiteConfig config = new SQLiteConfig();
    config.resetOpenMode(SQLiteOpenMode.CREATE);
    config.setBusyTimeout(BUSY_MILLISECONDS);
    config.enforceForeignKeys(true);
    config.enableRecursiveTriggers(true); // so that INSERT OR REPLACE cannot slip past the triggers
    config.setSynchronous(SynchronousMode.FULL);
    config.setCacheSize(CACHE_PAGES);
    // Else every insert writes the pages it touches to a temporary file, in case it must be undone.
    config.setTempStore(TempStore.MEMORY);
    config.setGetGeneratedKeys(false); // the driver would leave a read open after every insert
    if (migrating) {
      config.enforceForeignKeys(false); // rows may come before what they refer to
    }
    SQLiteDataSource source = new SQLiteDataSource(config);
    source.setUrl("jdbc:sqlite:" + file.toAbsolutePath());
    return source;
  }
}
