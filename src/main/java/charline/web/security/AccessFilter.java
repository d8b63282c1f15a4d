package charline.web.security;

import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Looks at every request before anything else does. The serving machine is let in by its loopback
 * address; others only if the page is shared and they show the token of a paired device. Whatever
 * changes the log must come from a page of this server and carry its form token.
 */
public final class AccessFilter {
  private static final String SEAT = "seat";
  private static final String COOKIE = "bench_device";

  /** Header or form field with the form token. */
  public static final String TOKEN_HEADER = "X-Bench-Token";

  private static final String TOKEN_FIELD = "token";

  private static final String PAIRING = "/pair";

  /** A file for pages lies in a folder that is named for what the files hold. */
  private static final Pattern FILE = Pattern.compile("/[0-9a-f]{8}/(.+)");

  /** The files that every page loads, and so the pairing page too. */
  private static final Set<String> OPEN_FILES =
      Set.of(
          """
          icon.svg tokens.css bench.css controls.css
          bench.js choose.js connection.js identity.js link.js navigate.js numbers.js page.js photo-store.js
          queue.js requests.js sending.js steps.js storage.js visited.js
          """
              .split("\\s+"));

  private final boolean shared;
  private final Secrets secrets = new Secrets();
  private final Devices devices;
  private final Pairing pairing;
  private volatile Hosts hosts;

  /**
   * @param shared whether paired devices are let in
   * @param announce is told every new pairing code
   * @param deviceFile where paired devices outlive a restart
   */
  public AccessFilter(boolean shared, Clock clock, Consumer<String> announce, Path deviceFile) {
    this.shared = shared;
    devices = new Devices(secrets, clock, deviceFile);
    pairing = shared ? new Pairing(secrets, clock, announce) : null;
  }

  /** Names the port, once it is known. */
  public void opened(int port) {
    hosts = Hosts.of(port, shared);
    pairing().ifPresent(Pairing::opened);
  }

  /** Addresses on the shop's network, such as "192.168.1.20:7464"; empty unless shared. */
  public List<String> sharedHosts() {
    return List.copyOf(hosts.shared());
  }

  public Devices devices() {
    return devices;
  }

  /** The pairing code, if the page is shared. */
  public Optional<Pairing> pairing() {
    return Optional.ofNullable(pairing);
  }

  /** Lets a request in, or turns it away. */
  public void check(Context ctx) {
    Headers.strict(ctx);
    String host = ctx.header("Host");
    if (hosts == null || !hosts.knows(host)) {
      throw new HttpRefusal(
          421,
          "This bench page does not answer under that name; use the address that the bench was"
              + " started with.");
    }
    Optional<Client> seat = seat(ctx, host);
    ctx.attribute(SEAT, seat.orElse(null));
    if (seat.isEmpty() && !isOpen(ctx.path())) {
      throw new HttpRefusal(
          401,
          "This device is not paired with the bench; open /pair and type the code that the serving"
              + " machine shows.");
    }
    switch (ctx.method().name()) {
      case "GET", "HEAD" -> {}
      case "POST" -> checkOrigin(ctx, host, seat);
      default -> throw new HttpRefusal(405, "The bench page accepts only GET, HEAD and POST.");
    }
  }

  /** Whether an unpaired device may see it. */
  private static boolean isOpen(String path) {
    Matcher file = FILE.matcher(path);
    return path.equals(PAIRING) || file.matches() && OPEN_FILES.contains(file.group(1));
  }

  private Optional<Client> seat(Context ctx, String host) {
    if (hosts.isHere(host) && isLoopback(ctx.ip())) {
      return Optional.of(
          new Client(Client.HERE, "the serving machine", true, secrets.formToken(Client.HERE)));
    }
    if (!shared) {
      return Optional.empty();
    }
    return Optional.ofNullable(ctx.cookie(COOKIE))
        .flatMap(devices::of)
        .map(d -> new Client(d.id(), d.name(), false, secrets.formToken(d.id())));
  }

  private static boolean isLoopback(String address) {
    try {
      return InetAddress.getByName(address.replaceAll("[\\[\\]]", "")).isLoopbackAddress();
    } catch (UnknownHostException e) {
      return false;
    }
  }

  private void checkOrigin(Context ctx, String host, Optional<Client> seat) {
    String origin = ctx.header("Origin");
    String site = ctx.header("Sec-Fetch-Site");
    boolean foreign =
        origin != null && !origin.equalsIgnoreCase("http://" + host)
            || site != null && !site.equals("same-origin");
    if (foreign) {
      throw new HttpRefusal(
          403, "Only pages of this bench may send entries; this one came from elsewhere.");
    }
    if (seat.isEmpty()) {
      Bodies.requireShort(ctx);
    }
    Bodies.check(ctx);
    if (seat.isEmpty()) {
      return; // pairing itself, which has its code
    }
    String token = ctx.header(TOKEN_HEADER);
    if (token == null && ctx.isFormUrlencoded()) {
      token = ctx.formParam(TOKEN_FIELD);
    }
    if (token == null || !Secrets.same(token, seat.get().formToken())) {
      throw new HttpRefusal(
          403, "This page was loaded before the bench restarted; reload it, then try again.");
    }
  }

  /** Who sent the request; empty only on pages that an unpaired device may see. */
  public static Optional<Client> seatOf(Context ctx) {
    return Optional.ofNullable(ctx.attribute(SEAT));
  }

  /** The serving machine, or the request is turned away. */
  public static void requireHere(Context ctx) {
    if (seatOf(ctx).filter(Client::here).isEmpty()) {
      throw new HttpRefusal(403, "Devices are managed on the serving machine only.");
    }
  }

  /** Pairs the device that sends a right code. */
  public void pair(Context ctx, String code, String name) {
    if (pairing == null) {
      throw HttpRefusal.notThere("This bench page is not shared, so there is nothing to pair.");
    }
    pairing.redeem(code, ctx.ip());
    String token = devices.pair(name.isBlank() ? "device at " + ctx.ip() : name);
    ctx.cookie(
        new Cookie(
            COOKIE,
            token,
            "/",
            (int) Devices.COOKIE.toSeconds(),
            false, // the shop's network has no certificates; the page says so
            true,
            null,
            SameSite.STRICT));
  }
}
