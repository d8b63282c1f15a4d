package charline.web.pages;

import charline.web.security.AccessFilter;
import charline.web.security.Devices;
import charline.web.security.HttpRefusal;
import charline.web.security.Pairing;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Clock;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The start page, pairing, and the devices that are let in. */
public final class PairingPages {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  private final AccessFilter door;
  private final Pages pages;
  private final Clock clock;

  PairingPages(AccessFilter door, Pages pages, Clock clock) {
    this.door = door;
    this.pages = pages;
    this.clock = clock;
  }

  void add(RoutesConfig routes) {
    routes.get("/pair", ctx -> pairPage(ctx, ""));
    routes.post("/pair", this::pair);
    routes.get("/devices", this::devices);
    routes.post("/devices/revoke", this::revoke);
  }

  /**
   * Devices as the page shows them.
   *
   * @param code the pairing code that holds now, empty if the page is not shared
   * @param until until when it holds
   * @param addresses where other devices find the page
   */
  public record DevicesView(
      Optional<String> code, String until, List<String> addresses, List<Row> rows) {}

  /** One paired device. */
  public record Row(String id, String name, String paired, String seen, String expires) {}

  private void pairPage(Context ctx, String trouble) {
    pages.send(ctx, "pair", pages.frame(ctx, "Pair this device", ""), Map.of("trouble", trouble));
  }

  private void pair(Context ctx) {
    String code = Optional.ofNullable(ctx.formParam("code")).orElse("");
    String name = Optional.ofNullable(ctx.formParam("name")).orElse("");
    try {
      door.pair(ctx, code, name);
    } catch (HttpRefusal e) {
      ctx.status(e.status());
      pairPage(ctx, e.getMessage());
      return;
    }
    ctx.redirect("/", HttpStatus.SEE_OTHER);
  }

  private void devices(Context ctx) {
    AccessFilter.requireHere(ctx);
    Optional<Pairing> pairing = door.pairing();
    DevicesView view =
        new DevicesView(
            pairing.map(p -> Pairing.spaced(p.code())),
            pairing.map(p -> time(p.expiresAt())).orElse(""),
            door.sharedHosts().stream().map(h -> "http://" + h + "/").toList(),
            door.devices().all().stream().map(this::row).toList());
    pages.send(ctx, "devices", pages.frame(ctx, "Devices", ""), Map.of("view", view));
  }

  private Row row(Devices.Device d) {
    return new Row(d.id(), d.name(), time(d.pairedAt()), time(d.seenAt()), time(d.expiresAt()));
  }

  private String time(Instant moment) {
    return TIME.format(moment.atZone(clock.getZone()));
  }

  private void revoke(Context ctx) {
    AccessFilter.requireHere(ctx);
    if (!door.devices().revoke(Optional.ofNullable(ctx.formParam("id")).orElse(""))) {
      throw HttpRefusal.notThere("That device is no longer paired.");
    }
    ctx.redirect("/devices", HttpStatus.SEE_OTHER);
  }
}
