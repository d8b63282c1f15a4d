package charline.picture;

import java.util.Arrays;
import java.util.Optional;

/** Kinds of picture that are kept, told by their first bytes and not by what a device says. */
public enum PictureKind {
  JPEG("image/jpeg", ".jpg", 0, new int[] {0xFF, 0xD8, 0xFF}),
  PNG("image/png", ".png", 0, new int[] {0x89, 'P', 'N', 'G', 0x0D, 0x0A, 0x1A, 0x0A}),
  WEBP("image/webp", ".webp", 8, new int[] {'W', 'E', 'B', 'P'});

  private final String type;
  private final String extension;
  private final int at;
  private final int[] bytes;

  PictureKind(String type, String extension, int at, int[] bytes) {
    this.type = type;
    this.extension = extension;
    this.at = at;
    this.bytes = bytes;
  }

  /** The kind of a file by its first bytes; a dozen of them are enough. */
  public static Optional<PictureKind> of(byte[] beginning) {
    return Arrays.stream(values()).filter(k -> k.begins(beginning)).findFirst();
  }

  /** Media type, such as image/jpeg. */
  public String type() {
    return type;
  }

  /** Ending of a file name, such as .jpg. */
  public String extension() {
    return extension;
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
