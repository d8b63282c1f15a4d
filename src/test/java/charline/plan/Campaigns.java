package charline.plan;

import charline.shops.Makers;
import charline.shops.Scenario;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * The campaigns so far, one line each, added to as they end, so that a run that was stopped goes on
 * where it was. The file's name holds a checksum of the classes behind it.
 */
final class Campaigns {
  private static final List<String> MAKERS =
      List.of(
          "charline/model/",
          "charline/stat/",
          "charline/window/",
          "charline/plan/BoardRota",
          "charline/plan/ControlPatch",
          "charline/plan/Dial",
          "charline/plan/Drafting",
          "charline/plan/Ladder",
          "charline/plan/Outlook",
          "charline/plan/PatchList",
          "charline/plan/Planner",
          "charline/plan/Campaign.",
          "charline/plan/Campaign$",
          "charline/plan/InventedShop",
          "charline/plan/Manner",
          "charline/plan/ShopLog",
          "charline/pooling/Yard",
          "charline/shops/Law",
          "charline/shops/Noise",
          "charline/shops/Scenario",
          "charline/shops/Truth");

  private final Path file;
  private final Map<String, Campaign> byKey = new HashMap<>();

  private Campaigns(Path file) {
    this.file = file;
  }

  static Campaigns in(Path folder) throws IOException {
    Files.createDirectories(folder);
    Campaigns all =
        new Campaigns(folder.resolve("campaigns-%s.csv".formatted(Makers.checksum(MAKERS))));
    if (Files.exists(all.file)) {
      // A line cut short by an interruption goes, so that the next one starts afresh.
      List<String> whole = Files.readAllLines(all.file).stream().filter(all::read).toList();
      Files.write(all.file, whole);
    }
    return all;
  }

  private static String key(Scenario scenario, int number, Manner manner) {
    return "%s,%d,%s".formatted(scenario.code(), number, manner);
  }

  synchronized boolean has(Scenario scenario, int number, Manner manner) {
    return byKey.containsKey(key(scenario, number, manner));
  }

  synchronized void add(Scenario scenario, int number, Manner manner, Campaign c)
      throws IOException {
    String key = key(scenario, number, manner);
    byKey.put(key, c);
    String line =
        String.format(
            Locale.ROOT,
            "%s,%s,%d,%d,%d,%d,%b,%.6f,%.6f,%.1f%n",
            key,
            c.end(),
            c.patches(),
            c.boards(),
            c.readings(),
            c.charred(),
            c.offLadder(),
            c.charRisk(),
            c.clearing(),
            c.seconds());
    Files.writeString(file, line, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
  }

  /** Keeps the campaign of a line; false if the line is not whole, so that it is run again. */
  private boolean read(String line) {
    String[] f = line.split(",", -1);
    boolean whole = f.length == 12 && f[11].matches("\\d+\\.\\d");
    if (whole) {
      byKey.put(
          String.join(",", f[0], f[1], f[2]),
          new Campaign(
              Campaign.End.valueOf(f[3]),
              Integer.parseInt(f[4]),
              Integer.parseInt(f[5]),
              Integer.parseInt(f[6]),
              Integer.parseInt(f[7]),
              Boolean.parseBoolean(f[8]),
              Double.parseDouble(f[9]),
              Double.parseDouble(f[10]),
              Double.parseDouble(f[11])));
    }
    return whole;
  }

  /** All campaigns of one manner in the first so many shops of a scenario. */
  synchronized List<Campaign> of(Scenario scenario, Manner manner, int shops) {
    return IntStream.range(PlanningStudy.FIRST_SHOP, PlanningStudy.FIRST_SHOP + shops)
        .mapToObj(number -> byKey.get(key(scenario, number, manner)))
        .toList();
  }
}
