package charline.web.pages;

import charline.log.KeptPhoto;
import charline.record.Photos;
import charline.web.entry.Entries;
import charline.web.entry.Fields;
import charline.web.entry.Receipt;
import charline.web.security.AccessFilter;
import charline.web.security.Client;
import charline.web.security.Headers;
import charline.web.security.HttpRefusal;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Where devices send what was tapped, and photographs are taken in and shown. */
record EntryPages(Entries entries, Photos photos, String person) {
  void add(RoutesConfig routes) {
    routes.get("/pulse", EntryPages::pulse);
    routes.post(
        "/entries/patch",
        ctx -> {
          String by = Pages.recorder(ctx, person);
          reply(ctx, entries.patch(fields(ctx), by, by));
        });
    routes.post(
        "/entries/reading",
        ctx -> reply(ctx, entries.reading(fields(ctx), Pages.recorder(ctx, person))));
    routes.post(
        "/entries/undo", ctx -> reply(ctx, entries.undo(fields(ctx), Pages.recorder(ctx, person))));
    routes.post("/photos", this::photo);
    routes.get("/photo/{code}/{id}", this::show);
  }

  /** Tells a device that the bench is there, and what its entries must carry now. */
  private static void pulse(Context ctx) {
    Pages.json(ctx, Map.of("token", AccessFilter.seatOf(ctx).map(Client::formToken).orElse("")));
  }

  private static Fields fields(Context ctx) {
    if (!ctx.isJson()) {
      throw new HttpRefusal(415, "An entry must be sent as application/json.");
    }
    return Fields.parse(ctx.body());
  }

  private static void reply(Context ctx, Receipt kept) {
    Map<String, Object> words = new LinkedHashMap<>();
    words.put("id", kept.id().toString());
    words.put("patch", kept.patch().toString());
    words.put("code", kept.code());
    words.put("passes", kept.passes());
    words.put("outcome", kept.outcome());
    words.put("again", kept.again());
    Pages.json(ctx, words);
  }

  private void photo(Context ctx) throws IOException {
    Fields fields = Fields.of(ctx::queryParam);
    try (PhotoUpload upload = PhotoUpload.receive(ctx)) {
      KeptPhoto photo =
          photos.keep(
              fields.id("id"),
              fields.id("patch"),
              upload::content,
              Optional.ofNullable(fields.line("by")).orElse(Pages.recorder(ctx, person)));
      Pages.json(ctx, Map.of("id", photo.id().toString(), "sha256", photo.sha256()));
    }
  }

  private void show(Context ctx) {
    KeptPhoto photo = photos.of(ctx.pathParam("code"), ctx.pathParam("id"));
    Headers.pictureOnly(ctx, photo.fileName().replaceAll("[^A-Za-z0-9._-]", "_"));
    ctx.header("Content-Length", Long.toString(photo.bytes()));
    ctx.contentType(photos.safeType(photo)).result(photos.content(photo));
  }
}
