package charline.record;

import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.Photo;
import charline.refusal.Refusal;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Optional;
import java.util.UUID;

/**
 * Photographs of patches. What a picture is, its first bytes say and not the device that sends it;
 * anything but a JPEG, PNG or WebP picture is refused.
 */
public final class Photos {
  /** Largest photograph. */
  public static final int MOST_BYTES = 12 * 1024 * 1024;

  /** The refusal of a larger one. */
  public static final String TOO_LARGE =
      "A photo must be at most 12 MB; this one is larger, so it was not kept. Take a smaller one.";

  private static final int LONGEST_NAME = 120;

  private final Logbook log;
  private final Clock clock;

  public Photos(Logbook log, Clock clock) {
    this.log = log;
    this.clock = clock;
  }

  /**
   * Keeps a photograph with its checksum, once.
   *
   * @param id identity that the device gave it
   * @param patch identity of its patch
   * @param content the file, byte for byte
   */
  public Photo keep(UUID id, UUID patch, byte[] content, String by) {
    Kind kind =
        Kind.of(content)
            .orElseThrow(
                () ->
                    Refusal.usage(
                        "A photo must be a JPEG, PNG or WebP picture; this file is not, so it was"
                            + " not kept."));
    return log.inTransaction(
        () -> {
          PatchEntry entry =
              log.patch(patch)
                  .orElseThrow(
                      () ->
                          Refusal.usage(
                              "The patch of this photo is not in the log; record the patch"
                                  + " first."));
          String code = entry.patch().code();
          Photo photo =
              new Photo(
                  id,
                  code + kind.extension,
                  kind.type,
                  content,
                  OffsetDateTime.now(clock).truncatedTo(ChronoUnit.SECONDS),
                  Optional.empty());
          if (!log.holds(id)) {
            log.addPhoto(code, photo, by);
          }
          return photo;
        });
  }

  /** A photograph of a patch. */
  public Photo of(String code, String id) {
    return log.photos(code.length() > LONGEST_NAME ? "" : code).stream()
        .filter(p -> p.id().toString().equals(id))
        .findFirst()
        .orElseThrow(() -> Refusal.usage("There is no such photo of this patch."));
  }

  /** What a photograph may be shown as: a picture of a known kind, or bytes to be saved. */
  public static String safeType(Photo photo) {
    return Kind.of(photo.content()).map(k -> k.type).orElse("application/octet-stream");
  }

  private enum Kind {
    JPEG("image/jpeg", ".jpg", 0, new int[] {0xFF, 0xD8, 0xFF}),
    PNG("image/png", ".png", 0, new int[] {0x89, 'P', 'N', 'G', 0x0D, 0x0A, 0x1A, 0x0A}),
    WEBP("image/webp", ".webp", 8, new int[] {'W', 'E', 'B', 'P'});

    private final String type;
    private final String extension;
    private final int at;
    private final int[] bytes;

    Kind(String type, String extension, int at, int[] bytes) {
      this.type = type;
      this.extension = extension;
      this.at = at;
      this.bytes = bytes;
    }

    static Optional<Kind> of(byte[] content) {
      return Arrays.stream(values()).filter(k -> k.begins(content)).findFirst();
    }

    private boolean begins(byte[] content) {
      if (content.length < at + bytes.length) {
        return false;
      }
      for (int i = 0; i < bytes.length; i++) {
        if ((content[at + i] & 0xFF) != bytes[i]) {
          return false;
        }
      }
      return true;
    }
  }
}
