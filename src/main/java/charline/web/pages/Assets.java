package charline.web.pages;

import io.javalin.config.RoutesConfig;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.CRC32;

/**
 * The files that pages load, each by its full name: there is no folder to look around in.
 *
 * <p>The addresses change with what any of the files holds, so that a device keeps them all and
 * asks for none of them again until then. Scripts import each other by names beside their own.
 */
final class Assets {
  private static final String[] NAMES =
      """
      icon.svg
      tokens.css bench.css controls.css home.css live.css record.css window.css work.css
      bench.js choose.js coats.js connection.js identity.js link.js live.js map.js moment.js navigate.js
      numbers.js page.js parts.js photo-store.js preview.js print.js queue.js record.js refusal.js renew.js requests.js
      sending.js shrink.js steps.js storage.js upload.js visited.js
      record/bars.js record/begin.js record/draft.js record/elements.js record/entry.js
      record/keeping.js record/kept.js record/limits.js record/offer.js record/outcome.js record/pad.js
      record/passes.js record/person.js record/photo.js record/place.js record/poison.js
      record/risk.js record/settings.js record/signal.js
      record/stopwatch.js record/tapes.js record/trouble.js record/waiting.js record/words.js
      """
          .split("\\s+");

  private static final Map<String, String> TYPES =
      Map.of(
          "css", "text/css; charset=utf-8",
          "js", "text/javascript; charset=utf-8",
          "svg", "image/svg+xml");

  private static final String KEPT_FOR_A_YEAR = "max-age=31536000, immutable";

  private static final Map<String, byte[]> FILES = new LinkedHashMap<>();
  private static final String FOLDER;

  static {
    CRC32 all = new CRC32();
    for (String name : NAMES) {
      FILES.put(name, content(name));
      all.update(FILES.get(name));
    }
    FOLDER = "/%08x/".formatted(all.getValue());
  }

  private Assets() {}

  static void add(RoutesConfig routes) {
    FILES.forEach(
        (name, content) -> {
          String type = TYPES.get(name.substring(name.lastIndexOf('.') + 1));
          routes.get(
              address(name),
              ctx ->
                  ctx.header("Cache-Control", KEPT_FOR_A_YEAR).contentType(type).result(content));
        });
  }

  /** Where a file is to be had, such as "/3f2a9c01/bench.js". */
  static String address(String name) {
    return FOLDER + name;
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
