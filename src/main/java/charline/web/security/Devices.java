package charline.web.security;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Paired devices. A device holds a token until a week after it was last seen; only the token's hash
 * is kept here, in a private file beside the log, so that a restart sends no device back to
 * pairing.
 */
public final class Devices {
  /** How long a device may stay away without pairing again. */
  static final Duration AWAY = Duration.ofDays(7);

  /** A browser keeps its token longer than any device is let in unseen. */
  static final Duration COOKIE = Duration.ofDays(365);

  private static final int MOST = 30;
  private static final int NAME_LENGTH = 40;

  /** A glance is written down no more often than this. */
  private static final Duration NOTED = Duration.ofHours(1);

  private final Secrets secrets;
  private final Clock clock;
  private final DeviceFile file;
  private final Map<String, Device> byTrace;
  private boolean kept = true;

  Devices(Secrets secrets, Clock clock, Path file) {
    this.secrets = secrets;
    this.clock = clock;
    this.file = new DeviceFile(file);
    byTrace = new LinkedHashMap<>(this.file.read());
  }

  /**
   * A paired device.
   *
   * @param id identity, no secret
   * @param name what the person called it
   * @param pairedAt when
   * @param seenAt its latest request, to the hour where it was before a restart
   */
  public record Device(String id, String name, Instant pairedAt, Instant seenAt) {
    /** Until when it is let in if it is not seen again. */
    public Instant expiresAt() {
      return seenAt.plus(AWAY);
    }
  }

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
        Secrets.trace(token), new Device(secrets.token().substring(0, 12), named(name), now, now));
    write();
    return token;
  }

  private static String named(String given) {
    String plain = given.strip().replaceAll("\\p{Cntrl}", "");
    return plain.length() > NAME_LENGTH ? plain.substring(0, NAME_LENGTH) : plain;
  }

  /** The device that shows a token, if it is still let in. */
  synchronized Optional<Device> of(String token) {
    forgetExpired();
    String trace = Secrets.trace(token);
    Device device = byTrace.get(trace);
    if (device == null) {
      return Optional.empty();
    }
    Device seen = new Device(device.id(), device.name(), device.pairedAt(), clock.instant());
    byTrace.put(trace, seen);
    if (Duration.between(device.seenAt(), seen.seenAt()).compareTo(NOTED) > 0) {
      write();
    }
    return Optional.of(seen);
  }

  /** No longer lets a device in. */
  public synchronized boolean revoke(String id) {
    boolean known = byTrace.values().removeIf(d -> d.id().equals(id));
    if (known) {
      write();
    }
    return known;
  }

  /** Calls a device otherwise; gives whether there is one of that identity. */
  public synchronized boolean rename(String id, String name) {
    String given = named(name);
    boolean known = false;
    for (Map.Entry<String, Device> each : byTrace.entrySet()) {
      Device d = each.getValue();
      if (d.id().equals(id) && !given.isEmpty()) {
        each.setValue(new Device(d.id(), given, d.pairedAt(), d.seenAt()));
        known = true;
      }
    }
    if (known) {
      write();
    }
    return known;
  }

  /** All that are let in, the first paired first. */
  public synchronized List<Device> all() {
    forgetExpired();
    Collection<Device> devices = byTrace.values();
    return devices.stream().sorted(Comparator.comparing(Device::pairedAt)).toList();
  }

  /** Whether they outlive a restart: false where the folder of the log cannot be written. */
  public synchronized boolean kept() {
    return kept;
  }

  private void write() {
    kept = file.write(byTrace);
  }

  private void forgetExpired() {
    Instant now = clock.instant();
    byTrace.values().removeIf(d -> !d.expiresAt().isAfter(now));
  }
}
