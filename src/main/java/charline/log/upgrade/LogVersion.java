package charline.log.upgrade;

import charline.log.database.SqlFailures;
import charline.log.database.SqliteFile;
import charline.refusal.Refusal;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;

/** Which version a log has, and whether it is sound. */
public final class LogVersion {
  /**
   * Up to this size a log is read whole before anything is done with it. A larger one, full of
   * photos, would keep every command waiting; there damage shows when it is read, and in a check.
   */
  private static final long READ_WHOLE_BYTES = 16 << 20;

  private LogVersion() {}

  /** Reads a small log whole and of a large one its version. */
  public static int of(Connection connection, Path file) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      if (file.toFile().length() <= READ_WHOLE_BYTES) {
        requireSound(statement, file);
      }
      return knownVersion(statement, file);
    }
  }

  /** Reads the whole file; refuses a damaged or newer log and gives the version of a sound one. */
  public static int inspect(Path file) {
    return inspect(file, file);
  }

  /**
   * @param known the file that a person knows this one by
   */
  public static int inspect(Path file, Path known) {
    try (Connection connection = SqliteFile.source(file, false).getConnection();
        Statement statement = connection.createStatement()) {
      requireSound(statement, known);
      return knownVersion(statement, known);
    } catch (SQLException e) {
      throw SqlFailures.of(e, known);
    }
  }

  private static void requireSound(Statement statement, Path file) throws SQLException {
    String verdict = SqliteFile.text(statement, "PRAGMA quick_check(1)");
    if (!verdict.equals("ok")) {
      throw Refusal.data(SqlFailures.damage(file, verdict.replaceAll("\\s+", " ")));
    }
  }

  /** Reads the table of versions alone; refuses a newer log. */
  private static int knownVersion(Statement statement, Path file) throws SQLException {
    String history = "SELECT count(*) FROM sqlite_schema WHERE name = 'flyway_schema_history'";
    if (SqliteFile.text(statement, history).equals("0")) {
      throw Refusal.data(SqlFailures.damage(file, "its table of versions is missing"));
    }
    int version =
        Integer.parseInt(
            SqliteFile.text(
                statement,
                "SELECT coalesce(max(CAST(version AS INTEGER)), 0) FROM flyway_schema_history WHERE"
                    + " success"));
    if (version > Migrations.NEWEST) {
      throw Refusal.data(
          "The log %s comes from a newer charline (its version is %d, this one reads up to %d); it was not changed. Update charline."
              .formatted(file, version, Migrations.NEWEST));
    }
    return version;
  }
}
