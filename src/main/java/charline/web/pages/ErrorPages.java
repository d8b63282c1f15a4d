package charline.web.pages;

import charline.fault.FaultFiles;
import charline.refusal.Refusal;
import charline.web.entry.Doubtful;
import charline.web.security.AccessFilter;
import charline.web.security.HttpRefusal;
import io.javalin.config.RoutesConfig;
import io.javalin.http.ContentType;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.UnsupportedCharsetException;
import java.time.Instant;
import java.util.Map;
import org.eclipse.jetty.http.HttpException;
import org.eclipse.jetty.io.EofException;

/** Whatever goes wrong leaves as one sentence; what the program thinks of it stays inside. */
final class ErrorPages {
  private static final int NOT_UNDERSTOOD = 400;
  private static final int UNDERSTOOD_BUT_REFUSED = 422;
  private static final int ARE_YOU_SURE = 409;
  private static final int OURS = 500;

  private final Pages pages;
  private final FaultFiles faults;

  ErrorPages(Pages pages, FaultFiles faults) {
    this.pages = pages;
    this.faults = faults;
  }

  void add(RoutesConfig routes) {
    routes.exception(HttpRefusal.class, (e, ctx) -> turned(ctx, e));
    routes.exception(Doubtful.class, (e, ctx) -> say(ctx, ARE_YOU_SURE, e.getMessage()));
    routes.exception(Refusal.class, (e, ctx) -> say(ctx, UNDERSTOOD_BUT_REFUSED, e.getMessage()));
    routes.exception(
        UnsupportedCharsetException.class, (e, ctx) -> turned(ctx, HttpRefusal.otherLetters()));
    routes.exception(
        IllegalCharsetNameException.class, (e, ctx) -> turned(ctx, HttpRefusal.otherLetters()));
    routes.exception(HttpResponseException.class, (e, ctx) -> library(ctx, e.getStatus()));
    routes.exception(EofException.class, (e, ctx) -> library(ctx, NOT_UNDERSTOOD));
    routes.exception(Exception.class, (e, ctx) -> other(ctx, e));
    routes.error(404, ctx -> answer404(ctx));
  }

  private void turned(Context ctx, HttpRefusal e) {
    boolean looking = ctx.method().name().equals("GET") && !wantsJson(ctx);
    if (e.status() == 401 && looking) {
      ctx.redirect("/pair");
      return;
    }
    say(ctx, e.status(), e.getMessage());
  }

  /** The server's own refusals carry a status; whatever else comes is a fault of the program. */
  private void other(Context ctx, Exception e) {
    if (e instanceof HttpException refused) {
      library(ctx, refused.getCode());
    } else {
      // The system's clock, since that of the page may be what fails.
      var details = faults.write(e, ctx.method() + " " + ctx.path(), Instant.now());
      String sentence = FaultFiles.sentence(e, "nothing was recorded", details);
      try {
        say(ctx, OURS, sentence);
      } catch (RuntimeException again) { // what fails may be the page that says so
        ctx.status(OURS).contentType(ContentType.TEXT_PLAIN).result(sentence);
      }
    }
  }

  private void library(Context ctx, int status) {
    say(
        ctx,
        status,
        switch (status) {
          case 413 -> "The request is too large for this page; nothing was recorded.";
          case 404 -> "There is no such page; go back to the start.";
          case 405 -> "The bench page accepts only GET, HEAD and POST.";
          default -> "The request was not understood; nothing was recorded.";
        });
  }

  private void answer404(Context ctx) {
    if (ctx.attribute("said") == null) {
      say(ctx, 404, "There is no such page; go back to the start.");
    }
  }

  private void say(Context ctx, int status, String sentence) {
    ctx.attribute("said", true);
    ctx.status(status);
    if (wantsJson(ctx)) {
      Pages.json(ctx, Map.of("sentence", sentence));
    } else {
      pages.send(ctx, "trouble", pages.frame(ctx, "Not done", ""), Map.of("sentence", sentence));
    }
  }

  private static boolean wantsJson(Context ctx) {
    String accept = ctx.header("Accept");
    return ctx.header(AccessFilter.TOKEN_HEADER) != null
        || accept != null && accept.contains("application/json");
  }
}
