package charline.web.security;

import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Where paired devices outlive a restart: a file beside the log that its owner alone may read, with
 * hashes of tokens and no token.
 */
final class DeviceFile {
  private final Path file;

  DeviceFile(Path file) {
    this.file = file;
  }

  /** The devices by the hash of their token; none where there is no file or none that reads. */
  Map<String, Devices.Device> read() {
    Map<String, Devices.Device> byTrace = new LinkedHashMap<>();
    try {
      if (!Files.exists(file)) {
        return byTrace;
      }
      for (Map<?, ?> each : maps(Files.readString(file))) {
        byTrace.put(
            text(each, "hash"),
            new Devices.Device(
                text(each, "id"),
                text(each, "name"),
                Instant.parse(text(each, "paired")),
                Instant.parse(text(each, "seen"))));
      }
      return byTrace;
    } catch (IOException | DateTimeException | NullPointerException e) {
      return new LinkedHashMap<>(); // every device pairs again
    }
  }

  private static List<Map<?, ?>> maps(String json) throws IOException {
    List<Map<?, ?>> all = new ArrayList<>();
    for (Object each : JSON.std.listFrom(json)) {
      if (each instanceof Map<?, ?> map) {
        all.add(map);
      }
    }
    return all;
  }

  private static String text(Map<?, ?> values, String name) {
    return values.get(name).toString();
  }

  /** Writes all of them at once; gives whether that was possible. */
  boolean write(Map<String, Devices.Device> byTrace) {
    List<Map<String, String>> all = new ArrayList<>();
    byTrace.forEach(
        (trace, d) ->
            all.add(
                Map.of(
                    "hash",
                    trace,
                    "id",
                    d.id(),
                    "name",
                    d.name(),
                    "paired",
                    d.pairedAt().toString(),
                    "seen",
                    d.seenAt().toString())));
    Path fresh = null;
    try {
      // A temporary file belongs to its owner alone from the start.
      fresh = Files.createTempFile(file.toAbsolutePath().getParent(), "devices", ".tmp");
      Files.writeString(fresh, JSON.std.asString(all), StandardCharsets.UTF_8);
      Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
      return true;
    } catch (IOException e) {
      discard(fresh);
      return false;
    }
  }

  private static void discard(Path fresh) {
    try {
      if (fresh != null) {
        Files.deleteIfExists(fresh);
      }
    } catch (IOException e) {
      return; // an empty file more in the folder
    }
  }
}
