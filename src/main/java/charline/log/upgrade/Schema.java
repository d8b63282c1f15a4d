package charline.log.upgrade;

import charline.log.database.SqlFailures;
import charline.log.database.SqliteFile;
import charline.refusal.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The tables, indexes and triggers of a log, which are its rules, word for word. Other programs can
 * write to an SQLite file, and a log without its triggers forgets what was amended.
 */
public final class Schema {
  private static final String RESOURCE = "schema.sql";
  private static final String HEAD = "-- == ";

  private Schema() {}

  /** The rules of a new log of the newest version, as {@link #text} gives them. */
  public static String known() {
    try (InputStream in = Schema.class.getResourceAsStream(RESOURCE)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The rules of an open log; what SQLite and the list of versions need is left out. */
  public static String text(Statement statement) throws SQLException {
    StringBuilder text = new StringBuilder();
    try (ResultSet set =
        statement.executeQuery(
            """
            SELECT type, name, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite#_%' ESCAPE '#'
              AND NOT (tbl_name = 'flyway_schema_history' AND type IN ('table', 'index'))
            ORDER BY type, name
            """)) {
      while (set.next()) {
        text.append(HEAD)
            .append(set.getString("type"))
            .append(' ')
            .append(set.getString("name"))
            .append('\n')
            .append(set.getString("sql"))
            .append('\n');
      }
    }
    return text.toString();
  }

  /** The rules of a new log of a version. */
  static String of(int version) throws IOException, SQLException {
    if (version == Migrations.NEWEST) {
      return known();
    }
    try (TemporaryCopy place = TemporaryCopy.place()) {
      Files.createFile(place.file());
      Migrations.apply(place.file(), version);
      try (Connection connection = SqliteFile.source(place.file(), false).getConnection();
          Statement statement = connection.createStatement()) {
        return text(statement);
      }
    }
  }

  /** What differs in a log of the newest version, a sentence each; empty if nothing does. */
  public static List<String> differences(Path file) {
    try (Connection connection = SqliteFile.source(file, false).getConnection();
        Statement statement = connection.createStatement()) {
      return differences(known(), text(statement));
    } catch (SQLException e) {
      throw SqlFailures.of(e, file);
    }
  }

  static List<String> differences(String known, String found) {
    if (known.equals(found)) {
      return List.of();
    }
    Map<String, String> must = parts(known);
    Map<String, String> is = parts(found);
    List<String> differences = new ArrayList<>();
    TreeSet<String> all = new TreeSet<>(must.keySet());
    all.addAll(is.keySet());
    for (String part : all) {
      if (!is.containsKey(part)) {
        differences.add("The %s is missing.".formatted(part));
      } else if (!must.containsKey(part)) {
        differences.add("The %s is not charline's.".formatted(part));
      } else if (!must.get(part).equals(is.get(part))) {
        differences.add("The %s is not as charline made it.".formatted(part));
      }
    }
    return differences;
  }

  private static Map<String, String> parts(String text) {
    Map<String, String> parts = new TreeMap<>();
    for (String part : text.split("(?m)^" + HEAD)) {
      int end = part.indexOf('\n');
      if (end > 0) {
        parts.put(part.substring(0, end), part.substring(end));
      }
    }
    return parts;
  }

  /**
   * Refuses a log whose rules are not those of its version.
   *
   * @param must the rules of that version
   * @param file the name that a person knows it by
   */
  static void require(String must, Statement statement, Path file) throws SQLException {
    List<String> differences = differences(must, text(statement));
    if (!differences.isEmpty()) {
      throw Refusal.data(
          "The rules of the log %s were changed by another program (%s%s), so it cannot be trusted; it was not changed. Restore the latest backup."
              .formatted(
                  file,
                  differences.get(0).replaceFirst("\\.$", "").replaceFirst("^The ", "the "),
                  differences.size() == 1 ? "" : "; %d more".formatted(differences.size() - 1)));
    }
  }
}
