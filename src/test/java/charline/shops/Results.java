package charline.shops;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The shops judged so far, one line each, added to as they come, so that a run that was interrupted
 * goes on where it stopped. The file's name holds a checksum of the classes that made it: results
 * of another version of the models are never mixed in.
 */
final class Results {
  /** Packages and classes whose change makes older results void. */
  private static final List<String> MAKERS =
      List.of(
          "charline/model/",
          "charline/stat/",
          "charline/window/",
          "charline/shops/Shop",
          "charline/shops/Truth",
          "charline/shops/Law",
          "charline/shops/Noise",
          "charline/shops/Scenario",
          "charline/shops/Judge",
          "charline/shops/ClassicalWindow",
          "charline/shops/PieceJudge",
          "charline/plan/");

  private final Path file;
  private final Map<String, Judged> byKey = new HashMap<>();

  private Results(Path file) {
    this.file = file;
  }

  static Results in(Path folder) throws IOException {
    Files.createDirectories(folder);
    Results results =
        new Results(folder.resolve("simulated-shops-%s.csv".formatted(Makers.checksum(MAKERS))));
    if (Files.exists(results.file)) {
      List<String> lines = Files.readAllLines(results.file);
      lines.stream().map(Judged::read).flatMap(Optional::stream).forEach(results::keep);
      // A line cut short by an interruption goes, so that the next one starts afresh.
      Files.write(results.file, results.byKey.values().stream().map(Judged::line).toList());
    }
    return results;
  }

  private void keep(Judged judged) {
    byKey.put(key(judged.scenario(), judged.number()), judged);
  }

  private static String key(String scenario, int number) {
    return scenario + " " + number;
  }

  synchronized boolean has(Scenario scenario, int number) {
    return byKey.containsKey(key(scenario.code(), number));
  }

  synchronized void add(Judged judged) throws IOException {
    keep(judged);
    Files.writeString(
        file, judged.line() + "\n", StandardOpenOption.CREATE, StandardOpenOption.APPEND);
  }

  /** So many shops of a scenario from a first one on. */
  synchronized List<Judged> of(Scenario scenario, int first, int count) {
    List<Judged> all = new ArrayList<>();
    for (int number = first; number < first + count; number++) {
      Judged judged = byKey.get(key(scenario.code(), number));
      if (judged != null) {
        all.add(judged);
      }
    }
    return all;
  }
}
