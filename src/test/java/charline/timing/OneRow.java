package charline.timing;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.SynchronousMode;
import org.sqlite.SQLiteDataSource;

/** The least that recording can take: one row written safely through SQLite's driver. */
final class OneRow {
  private OneRow() {}

  /** Takes the file to write to. */
  public static void main(String[] args) throws SQLException {
    SQLiteConfig config = new SQLiteConfig();
    config.setSynchronous(SynchronousMode.FULL);
    SQLiteDataSource source = new SQLiteDataSource(config);
    source.setUrl("jdbc:sqlite:" + args[0]);
    try (Connection connection = source.getConnection();
        Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA journal_mode = WAL");
      statement.execute("CREATE TABLE IF NOT EXISTS seen (passes INTEGER, outcome TEXT)");
      try (PreparedStatement insert =
          connection.prepareStatement("INSERT INTO seen VALUES (?, ?)")) {
        insert.setObject(1, 1);
        insert.setObject(2, "residue");
        insert.executeUpdate();
      }
    }
    System.out.println("recorded");
  }
}
