package charline.web.security;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Paired devices. A device holds a token for a working day; only its trace is kept here, in memory,
 * so that a restart sends every device back to pairing.
 */
public final class Devices {
  /** How long a device may work without pairing again. */
  static final Duration LIFETIME = Duration.ofHours(12);

  private static final int MOST = 30;

  private final Secrets secrets;
  private final Clock clock;
  private final Map<String, Device> byTrace = new HashMap<>();

  Devices(Secrets secrets, Clock clock) {
    this.secrets = secrets;
    this.clock = clock;
  }

  /**
   * A paired device.
   *
   * @param id identity, no secret
   * @param name what the person called it
   * @param pairedAt when
   * @param expiresAt until when it is let in
   * @param seenAt its latest request
   */
  public record Device(
      String id, String name, Instant pairedAt, Instant expiresAt, Instant seenAt) {}

  /** Lets a device in; gives the token that it must show. */
  synchronized String pair(String name) {
    forgetExpired();
    if (byTrace.size() >= MOST) {
      throw new HttpRefusal(
          429,
          "At most %d devices can be paired; revoke one on the serving machine.".formatted(MOST));
    }
    String token = secrets.token();
    Instant now = clock.instant();
    byTrace.put(
        secrets.trace(token),
        new Device(secrets.token().substring(0, 12), name, now, now.plus(LIFETIME), now));
    return token;
  }

  /** The device that shows a token, if it is still let in. */
  synchronized Optional<Device> of(String token) {
    forgetExpired();
    return Optional.ofNullable(
        byTrace.computeIfPresent(
            secrets.trace(token),
            (trace, d) ->
                new Device(d.id(), d.name(), d.pairedAt(), d.expiresAt(), clock.instant())));
  }

  /** No longer lets a device in. */
  public synchronized boolean revoke(String id) {
    return byTrace.values().removeIf(d -> d.id().equals(id));
  }

  /** All that are let in, the first paired first. */
  public synchronized List<Device> all() {
    forgetExpired();
    Collection<Device> devices = byTrace.values();
    return devices.stream().sorted(Comparator.comparing(Device::pairedAt)).toList();
  }

  private void forgetExpired() {
    Instant now = clock.instant();
    byTrace.values().removeIf(d -> !d.expiresAt().isAfter(now));
  }
}
