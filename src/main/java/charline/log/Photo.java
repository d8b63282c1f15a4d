package charline.log;

import java.time.OffsetDateTime;
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
    Optional<String> caption) {}
