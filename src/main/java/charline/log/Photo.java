package charline.log;

import charline.trial.PlainText;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.OffsetDateTime;
import java.util.HexFormat;
import java.util.Optional;
import java.util.UUID;

/**
 * A photograph of a patch, kept in the log itself.
 *
 * @param id permanent identity
 * @param fileName as it came
 * @param mediaType such as image/jpeg
 * @param content the image file, byte for byte
 * @param takenAt when it was taken
 * @param caption the person's words, if any
 */
public record Photo(
    UUID id,
    String fileName,
    String mediaType,
    byte[] content,
    OffsetDateTime takenAt,
    Optional<String> caption) {
  public Photo {
    fileName = PlainText.of(fileName).strip();
    caption = PlainText.prose(caption);
  }

  /** SHA-256 of the content, as 64 hexadecimal digits; kept beside it in the log. */
  public String sha256() {
    return sha256(content);
  }

  public static String sha256(byte[] content) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java has SHA-256.", e);
    }
  }
}
