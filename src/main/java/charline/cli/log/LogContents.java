package charline.cli.log;

import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.quantity.Figures;
import charline.wording.Json;
import java.nio.file.Path;
import java.util.List;

/**
 * The contents of a log, in a few words.
 *
 * @param patches patches that count
 * @param readings their readings
 */
record LogContents(int patches, int readings) {
  static LogContents of(Logbook log) {
    List<PatchEntry> patches = log.patches(Filter.ALL);
    return new LogContents(
        patches.size(), patches.stream().mapToInt(entry -> entry.patch().readings().size()).sum());
  }

  /** "26 patches with 106 readings". */
  String words() {
    return "%s with %s"
        .formatted(
            Figures.count(patches, "patch", "patches"),
            Figures.count(readings, "reading", "readings"));
  }

  /** The file that they are in, and how many. */
  Json json(Path file) {
    return new Json()
        .put("file", file.toString())
        .put("patches", patches)
        .put("readings", readings);
  }
}
