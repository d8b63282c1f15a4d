package charline.log.upgrade;

import charline.log.database.SqlFailures;
import charline.log.database.SqliteFile;
import charline.refusal.Refusal;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.function.Supplier;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;

/** The steps in db/migration that make the schema of a log. */
public final class Migrations {
  /** The newest version. */
  public static final int NEWEST = 16;

  private Migrations() {}

  /** Brings the schema up to date, all pending steps in one transaction. */
  public static void apply(Path file) {
    apply(file, NEWEST);
  }

  /** Brings the schema to a version. */
  public static void apply(Path file, int version) {
    asked(file, "be upgraded", () -> flyway(file, version).migrate());
  }

  /** Work of Flyway's, whose failures are mostly those of the file. */
  private static <T> T asked(Path file, String what, Supplier<T> work) {
    try {
      return work.get();
    } catch (FlywayException e) {
      for (Throwable cause = e; cause != null; cause = cause.getCause()) {
        if (cause instanceof SQLException sql) {
          throw SqlFailures.of(sql, file);
        }
      }
      throw Refusal.data(
          "The log %s cannot %s (%s); it was not changed."
              .formatted(file, what, e.getMessage().lines().findFirst().orElse("")),
          e);
    }
  }

  private static Flyway flyway(Path file, int version) {
    return Flyway.configure()
        .dataSource(SqliteFile.migrating(file, PhotoFunctions.byName()))
        .target(Integer.toString(version))
        .locations("classpath:db/migration")
        .group(true)
        .cleanDisabled(true)
        .load();
  }

  /** What differs between the steps that made this log and those that this program knows. */
  public static List<String> unknownTo(Path file) {
    return asked(
            file, "be checked", () -> flyway(file, NEWEST).validateWithResult().invalidMigrations)
        .stream()
        .map(
            m ->
                "Step %s of the log's schema differs from the one in this charline."
                    .formatted(m.version))
        .toList();
  }
}
