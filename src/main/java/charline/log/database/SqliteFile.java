package charline.log.database;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import org.sqlite.Function;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.SynchronousMode;
import org.sqlite.SQLiteConfig.TempStore;
import org.sqlite.SQLiteConnection;
import org.sqlite.SQLiteDataSource;
import org.sqlite.SQLiteOpenMode;

/** How an SQLite file is connected to. */
public final class SqliteFile {
  /** How long to wait for another program that keeps the file, in milliseconds. */
  public static final int BUSY_MILLISECONDS = 5000;

  /**
   * 16 MB at most, taken as they are used; with more, an import of a million readings is no
   * quicker.
   */
  private static final int CACHE_PAGES = 4_096;

  private SqliteFile() {}

  /**
   * Connections to a file that is there.
   *
   * @param migrating true while the schema changes
   */
  public static SQLiteDataSource source(Path file, boolean migrating) {
    return migrating ? migrating(file, Map.of()) : at(new SQLiteDataSource(config()), file);
  }

  /**
   * Connections for a change of the schema.
   *
   * @param functions what its steps call, by name, each of one value
   */
  public static SQLiteDataSource migrating(Path file, Map<String, Function> functions) {
    SQLiteConfig config = config();
    config.enforceForeignKeys(false); // rows may come before what they refer to
    return at(
        new SQLiteDataSource(config) {
          @Override
          public SQLiteConnection getConnection(String user, String password) throws SQLException {
            SQLiteConnection connection = super.getConnection(user, password);
            for (Map.Entry<String, Function> function : functions.entrySet()) {
              Function.create(
                  connection,
                  function.getKey(),
                  function.getValue(),
                  1,
                  Function.FLAG_DETERMINISTIC);
            }
            try (Statement statement = connection.createStatement()) {
              statement.execute("PRAGMA secure_delete = ON"); // what a step takes out is gone
            }
            return connection;
          }
        },
        file);
  }

  private static SQLiteConfig config() {
    SQLiteConfig config = new SQLiteConfig();
    config.resetOpenMode(SQLiteOpenMode.CREATE);
    config.setOpenMode(SQLiteOpenMode.OPEN_URI);
    config.setBusyTimeout(BUSY_MILLISECONDS);
    config.enforceForeignKeys(true);
    config.enableRecursiveTriggers(true); // so that INSERT OR REPLACE cannot slip past the triggers
    config.setSynchronous(SynchronousMode.FULL);
    config.setCacheSize(CACHE_PAGES);
    // Else every insert writes the pages it touches to a temporary file, in case it must be undone.
    config.setTempStore(TempStore.MEMORY);
    config.setGetGeneratedKeys(false); // the driver would leave a read open after every insert
    return config;
  }

  private static SQLiteDataSource at(SQLiteDataSource source, Path file) {
    source.setUrl("jdbc:sqlite:" + name(file.toAbsolutePath().toString()));
    return source;
  }

  /** What follows a question mark would be taken for an option of the driver. */
  private static String name(String path) {
    return path.matches(".*([?%#]|mode=memory).*")
        ? "file:"
            + path.replace("%", "%25")
                .replace("?", "%3F")
                .replace("#", "%23")
                .replace("mode=memory", "mode%3Dmemory")
        : path;
  }

  /** The version of the SQLite that files are read and written with. */
  public static String version() {
    try (Connection connection = new SQLiteDataSource().getConnection();
        Statement statement = connection.createStatement()) {
      return text(statement, "SELECT sqlite_version()");
    } catch (SQLException e) {
      throw SqlFailures.of(e, Path.of("in memory"));
    }
  }

  /** The first value of an answer, as text; empty if there is none. */
  public static String text(Statement statement, String sql) throws SQLException {
    try (ResultSet set = statement.executeQuery(sql)) {
      return set.next() ? String.valueOf(set.getString(1)) : "";
    }
  }
}
