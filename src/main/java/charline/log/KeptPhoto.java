package charline.log;

import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.UUID;

/**
 * A photograph in the log, without its content, which is asked for by {@link Logbook#photoContent}.
 *
 * @param id permanent identity
 * @param fileName such as P-0001.jpg
 * @param mediaType such as image/jpeg
 * @param bytes size of its content
 * @param sha256 SHA-256 of its content, as 64 hexadecimal digits; "none" where none was recorded
 * @param takenAt when it was taken
 * @param caption the person's words, if any
 */
public record KeptPhoto(
    UUID id,
    String fileName,
    String mediaType,
    long bytes,
    String sha256,
    OffsetDateTime takenAt,
    Optional<String> caption) {}
