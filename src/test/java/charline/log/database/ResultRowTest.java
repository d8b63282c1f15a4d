package charline.log.database;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ResultRowTest {
  /** Equal times are made once; those that differ in the zone of entry alone are not equal. */
  @Test
  void each_row_has_its_own_time_and_zone() throws SQLException {
    List<String> moments = new ArrayList<>();
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite::memory:");
        Statement statement = connection.createStatement();
        ResultSet set =
            statement.executeQuery(
                "SELECT column1 AS at_utc, column2 AS at_offset FROM (VALUES"
                    + " ('2026-05-01T10:00:00.000Z', '+02:00'),"
                    + " ('2026-05-01T10:00:00.000Z', '+02:00'),"
                    + " ('2026-05-01T10:00:00.000Z', '-03:00'),"
                    + " ('2026-05-01T10:00:01.000Z', '-03:00'))")) {
      ResultRow row = new ResultRow(set);
      while (set.next()) {
        moments.add(row.moment("at").toString());
      }
    }
    assertThat(moments)
        .containsExactly(
            "2026-05-01T12:00+02:00",
            "2026-05-01T12:00+02:00",
            "2026-05-01T07:00-03:00",
            "2026-05-01T07:00:01-03:00");
  }
}
