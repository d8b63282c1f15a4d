package charline.record;

import charline.log.KeptPhoto;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.Photo;
import charline.picture.BarePicture;
import charline.picture.PictureKind;
import charline.refusal.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;

/**
 * Photographs of patches. What a picture is, its first bytes say and not the device that sends it;
 * anything but a JPEG, PNG or WebP picture is refused. Kept is the picture alone, without where,
 * when and with which device it was taken.
 */
public final class Photos {
  /** Largest photograph. */
  public static final int MOST_BYTES = 12 * 1024 * 1024;

  /** Most photographs of one patch. */
  public static final int MOST_OF_A_PATCH = 40;

  /** The refusal of a larger one. */
  public static final String TOO_LARGE =
      "A photo must be at most 12 MB; this one is larger, so it was not kept. Take a smaller one.";

  private static final int LONGEST_NAME = 120;

  /** One picture is taken apart at a time, so that many that come at once need memory for one. */
  private static final ReentrantLock TURN = new ReentrantLock();

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
   * @param file gives the file as it came, when its turn has come
   */
  public KeptPhoto keep(UUID id, UUID patch, Supplier<byte[]> file, String by) {
    TURN.lock();
    try {
      BarePicture picture = BarePicture.of(file.get());
      return log.inTransaction(() -> keep(id, patch, picture, by));
    } finally {
      TURN.unlock();
    }
  }

  private KeptPhoto keep(UUID id, UUID patch, BarePicture picture, String by) {
    PatchEntry entry =
        log.patch(patch)
            .orElseThrow(
                () ->
                    Refusal.usage(
                        "The patch of this photo is not in the log; record the patch first."));
    String code = entry.patch().code();
    Photo photo =
        new Photo(
            id,
            code + picture.kind().extension(),
            picture.kind().type(),
            picture.content(),
            OffsetDateTime.now(clock).truncatedTo(ChronoUnit.SECONDS),
            Optional.empty());
    Optional<KeptPhoto> before = of(log.photos(code), id.toString());
    if (before.isPresent()) {
      requireSame(before.get(), photo);
      return before.get();
    }
    if (log.holds(id)) {
      throw Refusal.usage(
          "The identity of a photo must be its own, and this log has another entry under it; take"
              + " the photo again.");
    }
    if (log.photos(code).size() >= MOST_OF_A_PATCH) {
      throw Refusal.usage(
          "A patch can have at most %d photos, and %s has as many, so this one was not kept."
              .formatted(MOST_OF_A_PATCH, code));
    }
    log.addPhoto(code, photo, by);
    return of(log.photos(code), id.toString()).orElseThrow();
  }

  /** A device that sends a photo again must get an answer that is true of that photo. */
  private static void requireSame(KeptPhoto kept, Photo sent) {
    if (!kept.sha256().equals(sent.sha256())) {
      throw Refusal.usage(
          "Another picture is kept under the identity of this photo, so it was not kept; take the"
              + " photo again.");
    }
  }

  /** A photograph of a patch. */
  public KeptPhoto of(String code, String id) {
    return of(log.photos(code.length() > LONGEST_NAME ? "" : code), id)
        .orElseThrow(() -> Refusal.usage("There is no such photo of this patch."));
  }

  private static Optional<KeptPhoto> of(Iterable<KeptPhoto> photos, String id) {
    for (KeptPhoto photo : photos) {
      if (photo.id().toString().equals(id)) {
        return Optional.of(photo);
      }
    }
    return Optional.empty();
  }

  /** What a photograph shows, read piece by piece. */
  public InputStream content(KeptPhoto photo) {
    return log.photoContent(photo.id());
  }

  /** What a photograph may be shown as: a picture of a known kind, or bytes to be saved. */
  public String safeType(KeptPhoto photo) {
    try (InputStream content = content(photo)) {
      return PictureKind.of(content.readNBytes(16))
          .map(PictureKind::type)
          .orElse("application/octet-stream");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
