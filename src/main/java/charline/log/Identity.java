package charline.log;

import java.time.Clock;
import java.time.Instant;
import java.util.SplittableRandom;
import java.util.UUID;

/**
 * Identities of version 7 (RFC 9562, section 5.7): 48 bits of milliseconds since 1970, then a
 * 12-bit counter that keeps those of one millisecond in order (section 6.2, method 1), then 62
 * random bits.
 */
final class Identity {
  private static final int COUNTER_END = 1 << 12;

  private final Clock clock;
  private final SplittableRandom random;
  private long milliseconds;
  private int counter;

  /**
   * @param seed by chance, 64 bits: no two programs may draw alike. Identities are no secrets, so
   *     the generator behind them need not be one for secrets, which takes long to start
   */
  Identity(Clock clock, long seed) {
    this.clock = clock;
    random = new SplittableRandom(seed);
  }

  /** When an identity was given, to the millisecond. */
  static Instant givenAt(UUID id) {
    return Instant.ofEpochMilli(id.getMostSignificantBits() >>> 16);
  }

  /** Later ones are greater, even if the clock is set back or stops. */
  synchronized UUID next() {
    long now = clock.millis();
    if (now > milliseconds) {
      milliseconds = now;
      counter = random.nextInt(COUNTER_END / 2);
    } else if (++counter == COUNTER_END) {
      milliseconds++;
      counter = 0;
    }
    long high = milliseconds << 16 | 0x7000L | counter;
    long low = random.nextLong() >>> 2 | 0x8000_0000_0000_0000L;
    return new UUID(high, low);
  }
}
