package charline.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import charline.refusal.Refusal;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BarePictureTest {
  private static final List<String> PRIVATE =
      List.of("SERIAL", "LAKE", "Boat Camera", "moving", "http", "Photoshop");

  private static String letters(byte[] file) {
    return new String(file, StandardCharsets.ISO_8859_1);
  }

  /** Bare, smaller, the same when it is taken out again, and without a private word. */
  private static BarePicture bare(byte[] file) {
    assertThat(letters(file)).contains("SERIAL");
    BarePicture bare = BarePicture.of(file);
    assertThat(letters(bare.content())).doesNotContain(PRIVATE);
    assertThat(BarePicture.of(bare.content()).content()).isEqualTo(bare.content());
    assertThat(List.of(bare.width(), bare.height())).containsExactly(40, 30);
    return bare;
  }

  private static int[] pixels(byte[] file) throws IOException {
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(file));
    return image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
  }

  @Test
  void a_jpeg_of_a_camera_keeps_every_pixel_and_its_colours_and_says_nothing_more()
      throws IOException {
    byte[] file = Pictures.jpegOfACamera(ByteOrder.LITTLE_ENDIAN, 1);
    BarePicture bare = bare(file);
    assertThat(letters(bare.content())).contains("ICC_PROFILE").doesNotContain("Exif");
    assertThat(pixels(Pictures.plain("jpg"))).hasSize(1200);
    byte[] colourless = letters(bare.content()).contains("colours") ? bare.content() : null;
    assertThat(colourless).isNotNull();
    assertThat(bare.kind()).isEqualTo(PictureKind.JPEG);
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 6, 8})
  void how_a_jpeg_is_to_be_turned_stays_as_its_only_note(int turn) {
    for (ByteOrder order : List.of(ByteOrder.LITTLE_ENDIAN, ByteOrder.BIG_ENDIAN)) {
      String kept = letters(bare(Pictures.jpegOfACamera(order, turn)).content());
      int note = kept.indexOf("Exif\0\0");
      assertThat(note).isPositive();
      byte[] tiff = kept.substring(note + 6, note + 32).getBytes(StandardCharsets.ISO_8859_1);
      assertThat(tiff).isEqualTo(Turn.note(turn));
      assertThat(Turn.of(tiff)).isEqualTo(turn);
    }
  }

  @Test
  void a_plain_jpeg_and_a_plain_png_show_the_same_afterwards() throws IOException {
    for (String format : List.of("jpg", "png")) {
      byte[] file = Pictures.plain(format);
      assertThat(pixels(BarePicture.of(file).content())).isEqualTo(pixels(file));
    }
  }

  @Test
  void a_png_keeps_its_pixels_and_how_it_is_to_be_turned() throws IOException {
    assertThat(pixels(bare(Pictures.pngOfACamera(1)).content()))
        .isEqualTo(pixels(Pictures.plain("png")));
    byte[] turned = bare(Pictures.pngOfACamera(8)).content();
    assertThat(letters(turned)).contains("eXIf" + letters(Turn.note(8)));
    assertThat(pixels(turned)).isEqualTo(pixels(Pictures.plain("png")));
  }

  @Test
  void a_webp_drops_its_notes_and_no_longer_announces_them() {
    byte[] bare = bare(Pictures.webpOfACamera(1)).content();
    assertThat(letters(bare)).doesNotContain("EXIF", "XMP ");
    assertThat(bare[20]).as("flags").isZero();
    byte[] turned = bare(Pictures.webpOfACamera(6)).content();
    assertThat(letters(turned))
        .endsWith("EXIF" + letters(new byte[] {26, 0, 0, 0}) + letters(Turn.note(6)));
    assertThat(turned[20]).isEqualTo((byte) 8);
  }

  @Test
  void a_picture_that_is_cut_off_is_refused_wherever_it_ends() {
    for (byte[] file :
        List.of(Pictures.plain("jpg"), Pictures.plain("png"), Pictures.webpOfACamera(6))) {
      for (int length = 12; length < file.length - 2; length += 7) {
        byte[] cut = Arrays.copyOf(file, length);
        assertThatThrownBy(() -> BarePicture.of(cut))
            .as("%d of %d bytes", length, file.length)
            .isInstanceOf(Refusal.class)
            .hasMessageStartingWith("A photo must be a whole picture");
      }
    }
  }

  @Test
  void a_picture_of_too_many_pixels_is_refused() {
    assertThatThrownBy(() -> BarePicture.of(Pictures.pngOfSize(50_000)))
        .isInstanceOf(Refusal.class)
        .hasMessage(
            "A photo must have at most 120 megapixels; this one has 50000 x 50000 pixels, so it was"
                + " not kept. Take a smaller one.");
    assertThat(BarePicture.of(Pictures.pngOfSize(10_000)).width()).isEqualTo(10_000);
  }

  @Test
  void what_is_no_picture_is_refused() {
    assertThatThrownBy(() -> BarePicture.of("<html>".getBytes(StandardCharsets.UTF_8)))
        .isInstanceOf(Refusal.class)
        .hasMessageStartingWith("A photo must be a JPEG, PNG or WebP picture");
  }
}
