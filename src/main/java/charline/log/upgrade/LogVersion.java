package charline.log.upgrade;

import charline.log.database.SqlFailures;
import charline.log.database.SqliteFile;
import charline.refusal.Refusal;
import java.io.IOException;
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

  /**
   * Reads a small log whole and of a large one its version.
   *
   * @param known the file that a person knows this one by
   * @param trusting false if a log is refused whose rules are not those of its version
   */
  public static int of(Connection connection, Path file, Path known, boolean trusting)
      throws SQLException {
    try (Statement statement = connection.createStatement()) {
      // The rules first: what another program put among them must not run.
      int version = knownVersion(statement, known);
      if (version == Migrations.NEWEST && !trusting) {
        Schema.require(Schema.known(), statement, known);
      }
      if (file.toFile().length() <= READ_WHOLE_BYTES) {
        requireSound(statement, known);
      }
      return version;
    }
  }

  /**
   * Reads the whole file; refuses one that is damaged, newer or not as charline made it, and gives
   * its version.
   */
  public static int inspect(Path file) {
    return inspect(file, file);
  }

  /**
   * @param known the file that a person knows this one by
   */
  public static int inspect(Path file, Path known) {
    try (Connection connection = SqliteFile.source(file, false).getConnection();
        Statement statement = connection.createStatement()) {
      int version = knownVersion(statement, known);
      Schema.require(Schema.of(version), statement, known);
      requireSound(statement, known);
      return version;
    } catch (SQLException e) {
      throw SqlFailures.of(e, known);
    } catch (IOException e) {
      throw Refusal.data(
          "The rules of the log %s cannot be checked (%s); check the folder for temporary files."
              .formatted(known, e.getMessage()),
          e);
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
    String history =
        "SELECT count(*) FROM sqlite_schema WHERE type = 'table' AND name ="
            + " 'flyway_schema_history'";
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
