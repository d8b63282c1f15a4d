package charline.record;

import static charline.log.Boathouse.CLOCK;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import charline.log.Boathouse;
import charline.log.EmptyLog;
import charline.log.KeptPhoto;
import charline.log.Logbook;
import charline.picture.BarePicture;
import charline.picture.Pictures;
import charline.refusal.Refusal;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PhotosTest {
  @TempDir Path folder;
  private Logbook log;
  private Photos photos;
  private UUID patch;

  @BeforeEach
  void burn() {
    log = EmptyLog.open(folder.resolve("boathouse.db"), CLOCK);
    patch = new Boathouse(log).burn("char").patch().id();
    photos = new Photos(log, CLOCK);
  }

  @AfterEach
  void close() {
    log.close();
  }

  private KeptPhoto keep(UUID id, byte[] file) {
    return photos.keep(id, patch, () -> file, "Ada");
  }

  @Test
  void a_photo_is_kept_without_what_its_camera_says() {
    byte[] file = Pictures.jpegOfACamera(ByteOrder.BIG_ENDIAN, 3);
    KeptPhoto kept = keep(log.newId(), file);
    assertThat(photos.content(kept)).hasBinaryContent(BarePicture.of(file).content());
    assertThat(kept.bytes()).isLessThan(file.length);
    assertThat(photos.safeType(kept)).isEqualTo("image/jpeg");
  }

  @Test
  void a_photo_that_is_sent_again_is_kept_once_and_another_under_its_identity_is_refused() {
    UUID id = log.newId();
    KeptPhoto kept = keep(id, Pictures.pngOfACamera(6));
    assertThat(keep(id, Pictures.pngOfACamera(6))).isEqualTo(kept);
    assertThatThrownBy(() -> keep(id, Pictures.plain("jpg")))
        .isInstanceOf(Refusal.class)
        .hasMessage(
            "Another picture is kept under the identity of this photo, so it was not kept; take"
                + " the photo again.");
    assertThatThrownBy(() -> keep(patch, Pictures.plain("jpg")))
        .hasMessageStartingWith("The identity of a photo must be its own");
    assertThat(log.photos("P-0001")).containsExactly(kept);
  }

  @Test
  void a_patch_has_so_many_photos() {
    for (int i = 0; i < Photos.MOST_OF_A_PATCH; i++) {
      keep(log.newId(), Pictures.plain("png"));
    }
    assertThatThrownBy(() -> keep(log.newId(), Pictures.plain("png")))
        .isInstanceOf(Refusal.class)
        .hasMessage(
            "A patch can have at most 40 photos, and P-0001 has as many, so this one was not"
                + " kept.");
  }
}
