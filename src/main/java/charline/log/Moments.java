package charline.log;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/**
 * Times as the log keeps them: the instant in UTC as text of fixed width, so that text order is
 * time order, and the zone offset of entry beside it. Kept to the millisecond; what is finer is cut
 * off.
 */
final class Moments {
  private static final DateTimeFormatter UTC =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSS'Z'", Locale.ROOT);

  private Moments() {}

  static String utc(OffsetDateTime moment) {
    return UTC.format(moment.withOffsetSameInstant(ZoneOffset.UTC));
  }

  static String offset(OffsetDateTime moment) {
    return moment.getOffset().getId();
  }

  static OffsetDateTime of(String utc, String offset) {
    return Instant.parse(utc).atOffset(ZoneOffset.of(offset));
  }
}
