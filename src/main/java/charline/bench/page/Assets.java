package charline.bench.page;

import io.javalin.config.RoutesConfig;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;

/** The files that pages load, each by its full name: there is no folder to look around in. */
final class Assets {
  private static final String[] NAMES =
      """
      icon.svg
      tokens.css bench.css controls.css live.css record.css window.css
      bench.js coats.js identity.js link.js live.js map.js moment.js numbers.js photo-store.js
      print.js queue.js record.js refusal.js requests.js sending.js steps.js storage.js
      record/bars.js record/begin.js record/draft.js record/elements.js record/entry.js
      record/keeping.js record/kept.js record/limits.js record/outcome.js record/pad.js
      record/passes.js record/person.js record/photo.js record/risk.js record/settings.js
      record/stopwatch.js record/tapes.js record/trouble.js record/waiting.js record/words.js
      """
          .split("\\s+");

  private static final Map<String, String> TYPES =
      Map.of(
          "css", "text/css; charset=utf-8",
          "js", "text/javascript; charset=utf-8",
          "svg", "image/svg+xml");

  private Assets() {}

  static void add(RoutesConfig routes) {
    for (String name : NAMES) {
      byte[] content = content(name);
      String type = TYPES.get(name.substring(name.lastIndexOf('.') + 1));
      routes.get(
          "/" + name,
          ctx -> ctx.header("Cache-Control", "no-cache").contentType(type).result(content));
    }
  }

  private static byte[] content(String name) {
    try (InputStream in = Assets.class.getResourceAsStream("/bench/" + name)) {
      if (in == null) {
        throw new IllegalStateException("The file bench/" + name + " is missing from the jar.");
      }
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
