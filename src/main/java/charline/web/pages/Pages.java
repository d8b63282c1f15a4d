package charline.web.pages;

import charline.paper.PaperStyle;
import charline.web.security.AccessFilter;
import charline.web.security.Client;
import charline.web.security.Headers;
import com.fasterxml.jackson.jr.ob.JSON;
import gg.jte.Content;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.TemplateOutput;
import gg.jte.output.StringOutput;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Fills templates and sends what comes out. */
record Pages(boolean shared) {
  private static final TemplateEngine TEMPLATES =
      TemplateEngine.createPrecompiled(null, ContentType.Html, null, "charline.web.templates");

  Frame frame(Context ctx, String title, String tab, String... files) {
    return new Frame(title, tab, AccessFilter.seatOf(ctx), shared, List.of(files));
  }

  /** What the sender of a request is called: a paired device by its name, else the person here. */
  static String recorder(Context ctx, String person) {
    return AccessFilter.seatOf(ctx)
        .filter(client -> !client.here())
        .map(Client::name)
        .orElse(person);
  }

  /** Who a form says that it is from; else what its sender is called. */
  static String by(Context ctx, String person) {
    return Optional.ofNullable(ctx.formParam("by"))
        .filter(by -> !by.isBlank())
        .orElseGet(() -> recorder(ctx, person));
  }

  /** Sends a page made from a template. */
  void send(Context ctx, String template, Frame frame, Map<String, Object> values) {
    Map<String, Object> all = new HashMap<>(values);
    all.put("frame", frame);
    send(ctx, filled(template, all));
  }

  /** Sends a page, which may hold a paper or a part of one. */
  static void send(Context ctx, String html) {
    Headers.allowStyles(ctx, PaperStyle.everyText());
    ctx.contentType("text/html; charset=utf-8").result(html);
  }

  /** A template to be filled inside another page. */
  static Content content(String template, Map<String, Object> values) {
    return output -> TEMPLATES.render(template + ".jte", values, output);
  }

  static String filled(String template, Map<String, Object> values) {
    TemplateOutput output = new StringOutput();
    TEMPLATES.render(template + ".jte", values, output);
    return output.toString();
  }

  /** Sends a JSON object. */
  static void json(Context ctx, Object value) {
    try {
      ctx.contentType("application/json; charset=utf-8").result(JSON.std.asString(value));
    } catch (IOException e) {
      throw new UncheckedIOException(e); // memory to memory: nothing outside can fail
    }
  }
}
