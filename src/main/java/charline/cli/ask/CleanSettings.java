package charline.cli.ask;

import charline.answer.Coverage;
import charline.exposure.Settings;
import charline.log.PatchEntry;
import charline.quantity.Figures;
import charline.trial.Manner;
import charline.trial.Mark;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.wording.CircumstancesText;
import charline.wording.SettingsText;
import charline.wording.Table;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.IntSummaryStatistics;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The settings that came out clean, each with how often it was tried, its dose, when it was last
 * used, and whether the window now covers it. Counted with streams, for the reason that {@link
 * FindReport} gives.
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
   * @param found patches that were asked for; those that ended clean are counted
   * @param tried every patch of the same search, whatever its outcome
   * @param windows what windows say of settings; empty where they are not to be worked out
   */
  static String text(List<PatchEntry> found, List<PatchEntry> tried, Optional<Coverage> windows) {
    Map<Key, List<Patch>> clean =
        found.stream()
            .map(PatchEntry::patch)
            .filter(patch -> patch.lastReading().outcome().marks().contains(Mark.CLEAN))
            .collect(Collectors.groupingBy(Key::of, LinkedHashMap::new, Collectors.toList()));
    if (clean.isEmpty()) {
      return "";
    }
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
    List<String> heads =
        new ArrayList<>(
            List.of(">clean", ">of", ">power", ">speed", ">J/cm2", ">clean after", "last used"));
    windows.ifPresent(w -> heads.add("window"));
    heads.add("coating, wood, rig");
    Table table = new Table(heads.toArray(String[]::new));
    clean.entrySet().stream()
        .sorted(Comparator.comparing(e -> -e.getValue().size()))
        .forEach(
            e -> {
              Key key = e.getKey();
              List<Patch> patches = e.getValue();
              List<String> row =
                  new ArrayList<>(
                      List.of(
                          String.valueOf(patches.size()),
                          String.valueOf(all.getOrDefault(key, (long) patches.size())),
                          SettingsText.power(key.settings().power()),
                          SettingsText.speed(key.settings().form()),
                          doses(patches),
                          firstClean(patches),
                          lastUsed(patches)));
              windows.ifPresent(w -> row.add(covered(w, patches)));
              row.add(
                  others.get(key.where()).after(key.where(), key.settings())
                      + Optional.of(CircumstancesText.manner(key.manner()))
                          .filter(words -> !words.isEmpty())
                          .map(", "::concat)
                          .orElse(""));
              table.row(row.toArray(String[]::new));
            });
    return "Settings that came out clean, of so many tried\n"
        + table.text()
        + Table.paragraph(
            "A few clean patches do not make a setting safe; `charline window` shows how sure you"
                + " can be"
                + (windows.isPresent()
                    ? "."
                    : ", and --with-window whether it covers these settings."))
        + "\n";
  }

  /** Power checks may have changed what a setting delivers. */
  private static String doses(List<Patch> patches) {
    double low =
        patches.stream().mapToDouble(p -> p.exposure().doseJoulesPerCm2()).min().orElseThrow();
    double high =
        patches.stream().mapToDouble(p -> p.exposure().doseJoulesPerCm2()).max().orElseThrow();
    return Figures.span(low, high);
  }

  private static String lastUsed(List<Patch> patches) {
    return patches.stream()
        .map(p -> p.burnedAt().toLocalDate())
        .max(LocalDate::compareTo)
        .orElseThrow()
        .toString();
  }

  private static String covered(Coverage windows, List<Patch> patches) {
    Patch last = patches.get(patches.size() - 1);
    return switch (windows.of(last, firstClean(last))) {
      case INSIDE -> "inside";
      case OUTSIDE -> "outside";
      case OTHER_KNOBS -> "other knobs";
      case NO_WINDOW -> "none yet";
    };
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
