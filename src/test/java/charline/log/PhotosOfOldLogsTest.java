package charline.log;

import static charline.log.Boathouse.CLOCK;
import static org.assertj.core.api.Assertions.assertThat;

import charline.log.database.SqliteFile;
import charline.picture.BarePicture;
import charline.picture.Pictures;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Photos from before the program took their notes out. */
class PhotosOfOldLogsTest {
  private static final UUID CAMERA = UUID.fromString("018f0000-0000-7000-8000-000000000001");
  private static final UUID DAMAGED = UUID.fromString("018f0000-0000-7000-8000-000000000002");

  @TempDir Path folder;
  private Path file;
  private final byte[] photo = Pictures.jpegOfACamera(ByteOrder.LITTLE_ENDIAN, 6);

  @BeforeEach
  void photograph() throws Exception {
    file = Files.copy(Path.of("src/test/resources/old/version-14.db"), folder.resolve("old.db"));
    add(CAMERA, Photo.sha256(photo));
    add(DAMAGED, Photo.sha256(new byte[1]));
  }

  private void add(UUID id, String checksum) throws Exception {
    try (Connection connection = SqliteFile.source(file, false).getConnection();
        PreparedStatement insert =
            connection.prepareStatement(
                """
                INSERT INTO photo (id, patch_id, file_name, media_type, content, taken_at_utc,
                  taken_at_offset, sha256)
                SELECT ?, id, 'a.jpg', 'image/jpeg', ?, '2026-10-01T09:00:00.000Z', '+01:00', ?
                FROM patch WHERE code = 'LP-03'
                """)) {
      insert.setString(1, id.toString());
      insert.setBytes(2, photo);
      insert.setString(3, checksum);
      assertThat(insert.executeUpdate()).isOne();
    }
  }

  @Test
  void an_upgrade_takes_place_and_device_out_of_them_and_leaves_a_damaged_one_to_the_check()
      throws Exception {
    try (Logbook log = Logbook.openExisting(file, CLOCK)) {
      byte[] bare = BarePicture.of(photo).content();
      assertThat(log.photoContent(CAMERA)).hasBinaryContent(bare);
      assertThat(log.photos("LP-03"))
          .extracting(KeptPhoto::sha256)
          .contains(Photo.sha256(bare), Photo.sha256(new byte[1]));
      assertThat(log.photoContent(DAMAGED)).hasBinaryContent(photo);
      assertThat(log.check())
          .contains(
              new Finding(
                  Finding.Kind.FAULT,
                  "A photo of LP-03 is damaged: its checksum differs from the one recorded."));
    }
  }

  @Test
  void nothing_of_the_notes_stays_in_the_file() throws Exception {
    try (Connection connection = SqliteFile.source(file, false).getConnection();
        var statement = connection.createStatement()) {
      String trigger = "photo_is_never_deleted";
      String sql =
          SqliteFile.text(
              statement, "SELECT sql FROM sqlite_schema WHERE name = '%s'".formatted(trigger));
      statement.execute("PRAGMA secure_delete = ON");
      statement.execute("DROP TRIGGER " + trigger);
      statement.execute("DELETE FROM photo WHERE id = '%s'".formatted(DAMAGED));
      statement.execute(sql);
    }
    Logbook.openExisting(file, CLOCK).close();
    String bytes = Files.readString(file, StandardCharsets.ISO_8859_1);
    assertThat(List.of("SERIAL-4711", "LAKE-47")).noneMatch(bytes::contains);
  }
}
