package charline.pooling;

import charline.pooling.World.Kind;
import charline.shops.Makers;
import charline.shops.MarkdownTable;
import charline.stat.interval.ClopperPearson;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Writes {@code reports/pooling.md}: {@code mvn -q test-compile exec:java@pooling}. Worlds judged
 * before are kept in {@code target} and not judged again until the classes behind them change.
 */
public final class PoolingReport {
  /** Worlds below this one served to choose rules, so they prove nothing. */
  static final int FIRST_WORLD = 20_000;

  private static final List<String> MAKERS =
      List.of(
          "charline/model/",
          "charline/stat/",
          "charline/window/",
          "charline/pooling/PoolingTrial",
          "charline/pooling/Told",
          "charline/pooling/World",
          "charline/pooling/Yard",
          "charline/shops/Law",
          "charline/shops/Shop",
          "charline/shops/Truth");

  private static final Path REPORT = Path.of("reports", "pooling.md");

  private PoolingReport() {}

  /**
   * @param args number of worlds, 100 by default
   */
  public static void main(String[] args) throws IOException {
    int worlds = args.length > 0 ? Integer.parseInt(args[0]) : 100;
    String text = text(judge(worlds), worlds);
    Files.writeString(REPORT, text);
    System.out.print(text);
  }

  private static List<Told> judge(int worlds) throws IOException {
    Path file = Path.of("target", "pooling-%s.csv".formatted(Makers.checksum(MAKERS)));
    List<Told> kept = new ArrayList<>();
    if (Files.exists(file)) {
      Files.readAllLines(file).forEach(line -> kept.add(Told.parse(line)));
    }
    Set<Integer> done = kept.stream().map(Told::number).collect(Collectors.toSet());
    IntStream.range(FIRST_WORLD, FIRST_WORLD + worlds)
        .parallel()
        .filter(number -> !done.contains(number))
        .forEach(number -> keep(PoolingTrial.of(number), kept, file));
    kept.removeIf(told -> told.number() >= FIRST_WORLD + worlds);
    return kept;
  }

  private static void keep(List<Told> told, List<Told> kept, Path file) {
    synchronized (kept) {
      kept.addAll(told);
      try {
        Files.createDirectories(file.getParent());
        Files.writeString(
            file,
            told.stream().map(t -> t.line() + "\n").collect(Collectors.joining()),
            StandardOpenOption.CREATE,
            StandardOpenOption.APPEND);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  private static String text(List<Told> told, int worlds) throws IOException {
    List<Told> alike = kinds(told, kind -> kind == Kind.ALIKE);
    List<Told> unlike = kinds(told, kind -> kind != Kind.ALIKE);
    StringBuilder text = new StringBuilder(summary(alike, unlike, worlds));
    text.append("\n## Kind by kind\n\n").append(byKind(told));
    text.append("\n## World by world\n\n").append(said("worlds.md")).append('\n');
    MarkdownTable table =
        new MarkdownTable(
            "new wood",
            "windows with `--borrow`",
            "of the worlds that differ, more",
            "char promises broken",
            "clearing promises broken");
    row(table, "like the others", alike);
    row(table, "unlike the others", unlike);
    text.append(table.text()).append('\n').append(said("weight.md"));
    return text.append(tones(worlds)).toString();
  }

  /** The summary and what was expected, the numbers of the summary filled in. */
  private static String summary(List<Told> alike, List<Told> unlike, int worlds)
      throws IOException {
    String text = said("opening.md").replace("{worlds}", String.valueOf(worlds));
    for (int count : PoolingTrial.COUNTS) {
      for (String way : List.of(PoolingTrial.ALONE, PoolingTrial.BORROWED)) {
        text =
            text.replace(
                "{%s %d}".formatted(way, count),
                String.valueOf(
                    alike.stream()
                        .filter(t -> t.patches() == count && t.way().equals(way) && t.window())
                        .count()));
      }
    }
    Pairs windows = Pairs.of(alike, Told::window);
    Pairs unlikeWindows = Pairs.of(unlike, Told::window);
    return text.replace("{alike windows}", windows.words())
        .replace("{alike verdict}", verdict(windows))
        .replace("{unlike windows}", unlikeWindows.words())
        .replace("{unlike verdict}", verdict(unlikeWindows))
        .replace("{alike broken}", Pairs.of(alike, PoolingReport::broken).words())
        .replace("{unlike broken}", Pairs.of(unlike, PoolingReport::broken).words());
  }

  private static boolean broken(Told told) {
    return told.charBroken() || told.clearingBroken();
  }

  private static String verdict(Pairs windows) {
    if (!windows.beyondChance()) {
      return "chance alone may make such a difference";
    }
    return windows.more() > windows.fewer()
        ? "more than chance makes"
        : "**a loss**, more than chance makes";
  }

  private static void row(MarkdownTable table, String words, List<Told> told) {
    Pairs windows = Pairs.of(told, Told::window);
    table.row(
        words,
        windows.words(),
        windows.share(),
        Pairs.of(told, Told::charBroken).words(),
        Pairs.of(told, Told::clearingBroken).words());
  }

  private static String byKind(List<Told> told) {
    MarkdownTable table =
        new MarkdownTable(
            "new wood",
            ">patches",
            ">windows alone",
            ">with `--borrow`",
            ">gained",
            ">lost",
            "of these, gained",
            ">char broken, alone",
            ">with `--borrow`",
            ">clearing broken, alone",
            ">with `--borrow`");
    for (Kind kind : Kind.values()) {
      for (int count : PoolingTrial.COUNTS) {
        List<Told> both =
            kinds(told, k -> k == kind).stream().filter(t -> t.patches() == count).toList();
        List<Told> alone = way(both, PoolingTrial.ALONE);
        List<Told> borrowed = way(both, PoolingTrial.BORROWED);
        Pairs windows = Pairs.of(both, Told::window);
        table.row(
            kind.words,
            String.valueOf(count),
            windows(alone),
            windows(borrowed),
            String.valueOf(windows.more()),
            String.valueOf(windows.fewer()),
            windows.share(),
            broken(alone, Told::charBroken),
            broken(borrowed, Told::charBroken),
            broken(alone, Told::clearingBroken),
            broken(borrowed, Told::clearingBroken));
      }
    }
    return table.text();
  }

  private static String said(String name) throws IOException {
    try (InputStream in = PoolingReport.class.getResourceAsStream("/pooling/" + name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private static List<Told> kinds(List<Told> told, Predicate<Kind> kinds) {
    return told.stream().filter(t -> kinds.test(Kind.valueOf(t.scene()))).toList();
  }

  private static List<Told> way(List<Told> told, String way) {
    return told.stream().filter(t -> t.way().equals(way)).toList();
  }

  private static String windows(List<Told> told) {
    return told.stream().filter(Told::window).count() + " of " + told.size();
  }

  private static String broken(List<Told> told, Predicate<Told> promise) {
    int windows = (int) told.stream().filter(Told::window).count();
    int count = (int) told.stream().filter(promise).count();
    if (windows == 0) {
      return "-";
    }
    ClopperPearson share = new ClopperPearson(count, windows);
    return String.format(
        Locale.ROOT,
        "%d (%.0f to %.0f %%)",
        count,
        100 * share.atLeast(0.975),
        100 * share.atMost(0.975));
  }

  private static String tones(int trials) {
    StringBuilder text = new StringBuilder();
    text.append(
        """

        ## Estimated effect of tone

        24 patches on 4 boards, half pale and half dark; %d sets of trials a line. "Found" is the geometric mean of the
        medians. The next column counts the sets whose interval contains the truth; on average over the prior it should be
        90 %%. Trade lore is 2 to 4 (common practice, no published source). Windows and promises are for a pale coat.

        | boards | true pale over dark | found | interval contains the truth | windows for pale | char broken | clearing broken |
        | --- | --- | --- | --- | --- | --- | --- |
        """
            .formatted(trials));
    for (ToneTrial.Layout layout : ToneTrial.Layout.values()) {
      for (double factor : ToneTrial.FACTORS) {
        List<ToneTrial> all = ToneTrial.of(layout, factor, trials);
        List<Told> pale = all.stream().map(ToneTrial::pale).toList();
        double found =
            all.stream().mapToDouble(t -> Math.log(t.found().median())).average().orElseThrow();
        text.append(
            String.format(
                Locale.ROOT,
                "| %s | %.0f | %.2f | %d of %d | %s | %s | %s |%n",
                layout == ToneTrial.Layout.ONE_TO_A_BOARD ? "one tone each" : "both tones each",
                factor,
                Math.exp(found),
                all.stream().filter(ToneTrial::covered).count(),
                trials,
                windows(pale),
                broken(pale, Told::charBroken),
                broken(pale, Told::clearingBroken)));
      }
    }
    return text.toString();
  }
}
