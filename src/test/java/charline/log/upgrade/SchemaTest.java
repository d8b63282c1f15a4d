package charline.log.upgrade;

import static charline.log.Boathouse.CLOCK;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import charline.log.Boathouse;
import charline.log.Finding;
import charline.log.Logbook;
import charline.log.merge.Merge;
import charline.log.merge.Resolution;
import charline.refusal.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Logs whose rules another program changed. */
class SchemaTest {
  private static final String TAMPERED =
      "The rules of the log %s were changed by another program (%s), so it cannot be trusted; it"
          + " was not changed. Restore the latest backup.";

  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void setUp() {
    file = folder.resolve("boathouse.db");
    try (Logbook log = Logbook.open(file, CLOCK)) {
      new Boathouse(log).burn("char");
    }
  }

  private static void sql(Path file, String... statements) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      for (String sql : statements) {
        statement.execute(sql);
      }
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          DROP TRIGGER rig_changes_are_kept | the trigger rig_changes_are_kept is missing
          CREATE TRIGGER kind AFTER INSERT ON reading BEGIN UPDATE reading SET outcome = 'clean' WHERE id = NEW.id; END | the trigger kind is not charline's
          CREATE VIEW endless AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i FROM n) SELECT i FROM n | the view endless is not charline's
          DROP INDEX photo_by_patch | the index photo_by_patch is missing
          ALTER TABLE rig ADD COLUMN extra TEXT | the table rig is not as charline made it
          """)
  void a_log_whose_rules_were_changed_is_refused_and_a_check_names_each(
      String tampering, String difference) throws Exception {
    sql(file, tampering);
    byte[] before = Files.readAllBytes(file);
    assertThatThrownBy(() -> Logbook.open(file, CLOCK).close())
        .isInstanceOf(Refusal.class)
        .hasMessage(TAMPERED, file, difference);
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
    try (Logbook log = Logbook.openToCheck(file, CLOCK)) {
      assertThat(log.check())
          .contains(
              new Finding(
                  Finding.Kind.FAULT,
                  "The log's rules were changed: "
                      + difference.replaceFirst("^the ", "The ")
                      + "."));
    }
    Path here = folder.resolve("here.db");
    try (Logbook log = Logbook.open(here, CLOCK)) {
      assertThatThrownBy(() -> Merge.into(log, "Ada").from(file, Resolution.UNDECIDED))
          .isInstanceOf(Refusal.class)
          .hasMessage(TAMPERED, file, difference);
      assertThat(log.check()).isEmpty();
    }
  }

  @Test
  void a_rule_that_was_rewritten_in_place_is_named() throws Exception {
    sql(
        file,
        "PRAGMA writable_schema = ON",
        "UPDATE sqlite_schema SET sql = replace(sql, 'CHECK (length(id) = 36)', 'CHECK (1)') WHERE"
            + " name = 'board'");
    assertThatThrownBy(() -> Logbook.open(file, CLOCK).close())
        .isInstanceOf(Refusal.class)
        .hasMessage(TAMPERED, file, "the table board is not as charline made it");
  }

  @Test
  void an_older_log_whose_rules_were_changed_is_refused_before_it_is_upgraded() throws Exception {
    Path old =
        Files.copy(Path.of("src/test/resources/old/version-13.db"), folder.resolve("old.db"));
    sql(old, "DROP TRIGGER patch_changes_are_kept");
    byte[] before = Files.readAllBytes(old);
    assertThatThrownBy(() -> Logbook.open(old, CLOCK).close())
        .isInstanceOf(Refusal.class)
        .hasMessage(TAMPERED, old, "the trigger patch_changes_are_kept is missing");
    assertThat(Files.readAllBytes(old)).isEqualTo(before);
  }

  @Test
  void an_endless_list_of_versions_does_not_keep_a_merge() throws SQLException, IOException {
    Path other = folder.resolve("other.db");
    Files.copy(file, other);
    sql(
        other,
        "ALTER TABLE flyway_schema_history RENAME TO versions",
        "CREATE VIEW flyway_schema_history AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i"
            + " FROM n) SELECT i AS version, 1 AS success FROM n");
    try (Logbook log = Logbook.open(file, CLOCK)) {
      assertThatThrownBy(() -> Merge.into(log, "Ada").from(other, Resolution.UNDECIDED))
          .isInstanceOf(Refusal.class)
          .hasMessageContaining("its table of versions is missing");
    }
  }

  @Test
  void several_differences_are_counted() {
    assertThat(Schema.differences("-- == table a\nx\n-- == table b\ny\n", "-- == table a\nz\n"))
        .isEqualTo(List.of("The table a is not as charline made it.", "The table b is missing."));
  }
}
