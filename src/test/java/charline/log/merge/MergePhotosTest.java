package charline.log.merge;

import static charline.log.Boathouse.CLOCK;
import static charline.log.Boathouse.MORNING;
import static org.assertj.core.api.Assertions.assertThat;

import charline.log.Boathouse;
import charline.log.Logbook;
import charline.log.Photo;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MergePhotosTest {
  @TempDir Path folder;
  private Path there;
  private Logbook log;

  @BeforeEach
  void part() {
    there = folder.resolve("slipway.db");
    log = Logbook.open(folder.resolve("boathouse.db"), CLOCK);
    new Boathouse(log).burn("char");
  }

  @AfterEach
  void close() {
    log.close();
  }

  private static void photograph(Logbook log) {
    byte[] content = {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF, 1};
    log.addPhoto(
        "P-0001",
        new Photo(log.newId(), "a.jpg", "image/jpeg", content, MORNING, Optional.empty()),
        "Bo");
  }

  /** As a worn memory card would. */
  private static void damage(Path file) throws SQLException {
    try (var connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      String trigger = "photo_keeps_its_identity";
      String sql;
      try (var set =
          statement.executeQuery("SELECT sql FROM sqlite_schema WHERE name = '" + trigger + "'")) {
        sql = set.getString(1);
      }
      statement.executeUpdate("DROP TRIGGER " + trigger);
      statement.executeUpdate("UPDATE photo SET content = x'00'");
      statement.executeUpdate(sql);
    }
  }

  private Merged merge() {
    return Merge.into(log, "Ada").from(there, Resolution.UNDECIDED);
  }

  @Test
  void photos_come_in_once_with_their_checksums() {
    log.backup(there);
    try (Logbook other = Logbook.open(there, CLOCK)) {
      photograph(other);
    }
    assertThat(merge().photos()).isEqualTo(1);
    assertThat(merge().photos()).isZero();
    assertThat(log.photos("P-0001")).singleElement().matches(p -> p.bytes() == 4);
    assertThat(log.check()).isEmpty();
  }

  @Test
  void a_photo_that_is_damaged_there_stays_out_and_is_named() throws SQLException {
    log.backup(there);
    try (Logbook other = Logbook.open(there, CLOCK)) {
      photograph(other);
    }
    damage(there);
    Merged merged = merge();
    assertThat(merged.photos()).isZero();
    assertThat(merged.damage())
        .containsExactly(
            "A photo of P-0001 in slipway.db is damaged: its checksum differs from the one"
                + " recorded. It was left out.");
    assertThat(log.check()).as("this log stays sound").isEmpty();
  }

  @Test
  void a_photo_that_differs_in_two_logs_is_named() throws SQLException {
    photograph(log);
    log.backup(there);
    damage(there);
    Merged merged = merge();
    assertThat(merged.conflicts()).isEmpty();
    assertThat(merged.damage())
        .containsExactly(
            "A photo of P-0001 differs between this log and slipway.db, so one of them is damaged;"
                + " check both logs.");
    assertThat(log.check()).isEmpty();
  }
}
