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
    routes.post("/devices/rename", this::rename);
  }

  /**
   * Devices as the page shows them.
   *
   * @param code the pairing code that holds now, empty if the page is not shared
   * @param until until when it holds
   * @param scan the chosen address with the code, to scan
   * @param addresses where other devices find the page, what most can open first
   * @param chosen the one to scan
   * @param kept whether paired devices outlive a restart
   */
  public record DevicesView(
      Optional<String> code,
      String until,
      Optional<ScanCode> scan,
      List<String> addresses,
      int chosen,
      List<Row> rows,
      boolean kept) {}

  /** One paired device. */
  public record Row(String id, String name, String paired, String seen, String expires) {}

  private void pairPage(Context ctx, String trouble) {
    String scanned = Optional.ofNullable(ctx.queryParam("code")).orElse("");
    pages.send(
        ctx,
        "pair",
        pages.frame(ctx, "Pair this device", ""),
        Map.of("trouble", trouble, "code", scanned.matches("[\\d ]{8,9}") ? scanned : ""));
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
    List<String> addresses = door.sharedHosts().stream().map(h -> "http://" + h + "/").toList();
    int chosen = chosen(ctx, addresses.size());
    Optional<String> code = pairing.map(Pairing::code);
    DevicesView view =
        new DevicesView(
            code.map(Pairing::spaced),
            pairing.map(p -> time(p.expiresAt())).orElse(""),
            code.filter(c -> !addresses.isEmpty())
                .map(c -> ScanCode.of(addresses.get(chosen) + "pair?code=" + c)),
            addresses,
            chosen,
            door.devices().all().stream().map(this::row).toList(),
            door.devices().kept());
    pages.send(
        ctx,
        "devices",
        pages.frame(ctx, "Devices", "", "work.css", "renew.js"),
        Map.of("view", view));
  }

  private static int chosen(Context ctx, int addresses) {
    String text = Optional.ofNullable(ctx.queryParam("address")).orElse("");
    int chosen = text.matches("\\d{1,2}") ? Integer.parseInt(text) : 0;
    return chosen < addresses ? chosen : 0;
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

  private void rename(Context ctx) {
    AccessFilter.requireHere(ctx);
    String name = Optional.ofNullable(ctx.formParam("name")).orElse("");
    if (name.isBlank()) {
      throw new HttpRefusal(422, "A device needs a name; type one.");
    }
    if (!door.devices().rename(Optional.ofNullable(ctx.formParam("id")).orElse(""), name)) {
      throw HttpRefusal.notThere("That device is no longer paired.");
    }
    ctx.redirect("/devices", HttpStatus.SEE_OTHER);
  }
}
