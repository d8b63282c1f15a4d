package charline.picture;

import charline.refusal.Refusal;

/**
 * A picture file with nothing in it but the picture, its colour profile and how it is to be turned:
 * no place, no time, no device, no owner, no smaller or moving copy of it.
 *
 * @param kind what its first bytes say
 * @param content the file
 * @param width in pixels, before it is turned
 * @param height in pixels, before it is turned
 */
public record BarePicture(PictureKind kind, byte[] content, int width, int height) {
  /** Largest picture that is kept, in pixels: a device that shows it needs four bytes for each. */
  public static final long MOST_PIXELS = 120_000_000;

  /**
   * Takes a picture out of its file. A bare picture gives itself again.
   *
   * @throws Refusal if it is no JPEG, PNG or WebP picture, is cut off or has too many pixels
   */
  public static BarePicture of(byte[] file) {
    PictureKind kind =
        PictureKind.of(file)
            .orElseThrow(
                () ->
                    Refusal.usage(
                        "A photo must be a JPEG, PNG or WebP picture; this file is not, so it was"
                            + " not kept."));
    BarePicture bare;
    try {
      bare =
          switch (kind) {
            case JPEG -> new JpegParts(file).bare();
            case PNG -> new PngParts(file).bare();
            case WEBP -> new WebpParts(file).bare();
          };
    } catch (CutOffException | IndexOutOfBoundsException e) {
      throw Refusal.usage(
          "A photo must be a whole picture; this file is damaged or cut off, so it was not kept.",
          e);
    }
    if ((long) bare.width * bare.height > MOST_PIXELS) {
      throw Refusal.usage(
          "A photo must have at most %d megapixels; this one has %d x %d pixels, so it was not kept. Take a smaller one."
              .formatted(MOST_PIXELS / 1_000_000, bare.width, bare.height));
    }
    return bare;
  }

  /** A picture file that ends before its picture does, or contradicts itself. */
  static final class CutOffException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    CutOffException(String where) {
      super(where);
    }
  }
}
