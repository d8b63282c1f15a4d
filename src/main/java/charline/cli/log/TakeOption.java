package charline.cli.log;

import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.quantity.Figures;
import java.util.List;

/** The contents of a log, in a few words. */
final class TakeOption {
  private TakeOption() {}

  /** "26 patches with 106 readings". */
  static String of(Logbook log) {
    List<PatchEntry> patches = log.patches(Filter.ALL);
    int readings = patches.stream().mapToInt(entry -> entry.patch().readings().size()).sum();
    return "%s with %s"
        .formatted(
            Figures.count(patches.size(), "patch", "patches"),
            Figures.count(readings, "reading", "readings"));
  }
}
