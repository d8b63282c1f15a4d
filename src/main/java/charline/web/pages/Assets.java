package charline.web.pages;

import io.javalin.config.RoutesConfig;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;

/** The few files that pages load, each by its full name: there is no folder to look around in. */
final class Assets {
  private static final Map<String, String> TYPES =
      Map.of(
          "bench.css", "text/css; charset=utf-8",
          "bench.js", "text/javascript; charset=utf-8",
          "record.js", "text/javascript; charset=utf-8",
          "window.js", "text/javascript; charset=utf-8",
          "set-up.js", "text/javascript; charset=utf-8",
          "print.js", "text/javascript; charset=utf-8",
          "icon.svg", "image/svg+xml");

  private Assets() {}

  static void add(RoutesConfig routes) {
    TYPES.forEach(
        (name, type) -> {
          byte[] content = content(name);
          routes.get(
              "/" + name,
              ctx -> ctx.header("Cache-Control", "no-cache").contentType(type).result(content));
        });
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
