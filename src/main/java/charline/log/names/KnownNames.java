package charline.log.names;

import charline.log.LogFile;
import charline.log.database.SqliteFile;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;

/** Reads names from a log without a check of its rules, without an upgrade and without waiting. */
public final class KnownNames {
  /** More would not fit on a screen. */
  private static final int MOST = 200;

  private KnownNames() {}

  /**
   * Names that begin with a text, in whichever case.
   *
   * @return none where the log is missing, damaged, locked or of another version
   */
  public static List<String> of(Path log, NameKind kind, String beginning) {
    try {
      LogFile.requireLog(log, "another log");
      return read(log, kind, beginning);
    } catch (RuntimeException | SQLException e) {
      return List.of(); // a prompt is no place for a message; the command itself gives it
    }
  }

  private static List<String> read(Path log, NameKind kind, String beginning) throws SQLException {
    List<String> names = new ArrayList<>();
    try (Connection connection = SqliteFile.source(log, false).getConnection();
        Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA busy_timeout = 100");
      statement.execute("PRAGMA query_only = ON");
      try (ResultSet set = statement.executeQuery(kind.sql())) {
        while (set.next() && names.size() < MOST) {
          String name = set.getString(1);
          if (name != null
              && name.lines().count() == 1
              && name.regionMatches(true, 0, beginning, 0, beginning.length())) {
            names.add(name);
          }
        }
      }
    }
    return names;
  }
}
