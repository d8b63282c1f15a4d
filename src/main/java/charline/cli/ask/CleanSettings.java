package charline.cli.ask;

import charline.exposure.Settings;
import charline.log.PatchEntry;
import charline.trial.Manner;
import charline.trial.Mark;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.wording.CircumstancesText;
import charline.wording.SettingsText;
import charline.wording.Table;
import java.util.Comparator;
import java.util.IntSummaryStatistics;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The settings that came out clean, each with how often it was tried. Counted with streams, for the
 * reason that {@link FindReport} gives.
 */
final class CleanSettings {
  private CleanSettings() {}

  /** What was dialled in, on which coating, wood and rig. */
  private record Key(String family, String wood, String rig, Settings settings, Manner manner) {
    static Key of(Patch patch) {
      return new Key(
          patch.finish().family(),
          patch.board().wood(),
          patch.rig().name(),
          patch.settings(),
          patch.manner());
    }

    String where() {
      return "%s over %s, %s".formatted(family, wood, rig);
    }
  }

  /**
   * @param found patches that ended clean
   * @param tried every patch of the same search, whatever its outcome
   */
  static String text(List<PatchEntry> found, List<PatchEntry> tried) {
    Map<Key, List<Patch>> clean =
        found.stream()
            .map(PatchEntry::patch)
            .collect(Collectors.groupingBy(Key::of, LinkedHashMap::new, Collectors.toList()));
    Map<Key, Long> all =
        tried.stream()
            .map(entry -> Key.of(entry.patch()))
            .collect(Collectors.groupingBy(key -> key, Collectors.counting()));
    Map<String, OtherKnobs> others =
        clean.keySet().stream()
            .collect(
                Collectors.groupingBy(
                    Key::where,
                    Collectors.collectingAndThen(
                        Collectors.mapping(Key::settings, Collectors.toList()), OtherKnobs::of)));
    Table table =
        new Table(
            ">clean", ">of tried", ">power", ">speed", ">first clean after", "coating, wood, rig");
    clean.entrySet().stream()
        .sorted(Comparator.comparing(e -> -e.getValue().size()))
        .forEach(
            e ->
                table.row(
                    String.valueOf(e.getValue().size()),
                    String.valueOf(all.getOrDefault(e.getKey(), 0L)),
                    SettingsText.power(e.getKey().settings().power()),
                    SettingsText.speed(e.getKey().settings().form()),
                    firstClean(e.getValue()),
                    others.get(e.getKey().where()).after(e.getKey().where(), e.getKey().settings())
                        + Optional.of(CircumstancesText.manner(e.getKey().manner()))
                            .filter(words -> !words.isEmpty())
                            .map(", "::concat)
                            .orElse("")));
    return "Settings that came out clean\n"
        + table.text()
        + Table.paragraph(
            "A few clean patches do not make a setting safe; `charline window` shows how sure you"
                + " can be.")
        + "\n";
  }

  /** "1 pass", or "1-3 passes" where patches differ. */
  private static String firstClean(List<Patch> patches) {
    IntSummaryStatistics passes =
        patches.stream().mapToInt(CleanSettings::firstClean).summaryStatistics();
    return passes.getMin() == passes.getMax()
        ? SettingsText.passes(passes.getMin())
        : passes.getMin() + "-" + SettingsText.passes(passes.getMax());
  }

  /** Passes of the reading from which on a patch was clean. */
  private static int firstClean(Patch patch) {
    int passes = patch.lastReading().passes();
    for (int i = patch.readings().size() - 1; i >= 0; i--) {
      Reading reading = patch.readings().get(i);
      if (!reading.outcome().marks().contains(Mark.CLEAN)) {
        return passes;
      }
      passes = reading.passes();
    }
    return passes;
  }
}
