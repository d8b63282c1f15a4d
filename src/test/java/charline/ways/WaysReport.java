package charline.ways;

import charline.compare.Contest;
import charline.compare.Side;
import charline.exposure.Figure;
import charline.model.Estimate;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.ModelFit;
import charline.model.Trials;
import charline.shops.Law;
import charline.shops.MarkdownTable;
import charline.shops.Scenario;
import charline.shops.Share;
import charline.shops.ShopBench;
import charline.shops.Truth;
import charline.window.Box;
import charline.window.Forecast;
import charline.window.Requirements;
import charline.window.RigSetup;
import charline.window.WindowFinder;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/**
 * Judges simulated shops that used two figures and writes {@code reports/ways.md}: {@code mvn -q
 * test-compile exec:java@ways}. The first argument is the number of shops of a kind; where nothing
 * differs, twice as many are judged.
 */
public final class WaysReport {
  private static final int SHOPS = 100;

  /** No shop before this one may be judged here: they served to choose the prior and the rules. */
  private static final int FIRST_SHOP = 40_000;

  private static final double FACTOR = 1.8;
  private static final int PASSES = 2;
  private static final Requirements ASKED = Requirements.USUAL;

  private static final List<TwoFigures.Kind> KINDS =
      List.of(
          new TwoFigures.Kind("alike, 12 lines and 6 circles", 0, 0, 3),
          new TwoFigures.Kind("alike, 9 and 9", 0, 0, 2),
          new TwoFigures.Kind("circles char at 1/1.8, 12 and 6", -Math.log(FACTOR), 0, 3),
          new TwoFigures.Kind("circles char at 1/1.8, 9 and 9", -Math.log(FACTOR), 0, 2),
          new TwoFigures.Kind("circles char at 1.8, 9 and 9", Math.log(FACTOR), 0, 2),
          new TwoFigures.Kind("circles clear at 1.8, 9 and 9", 0, Math.log(FACTOR), 2));

  private WaysReport() {}

  public static void main(String[] args) throws IOException {
    int shops = args.length > 0 ? Integer.parseInt(args[0]) : SHOPS;
    long started = System.nanoTime();
    List<Told> told = new ArrayList<>();
    for (TwoFigures.Kind kind : KINDS) {
      told.add(
          new Told(
              kind,
              IntStream.range(0, alike(kind) ? 2 * shops : shops)
                  .map(number -> FIRST_SHOP + number)
                  .parallel()
                  .mapToObj(number -> shop(kind, number))
                  .toList()));
      System.out.println(kind.code() + " judged.");
    }
    double minutes = (System.nanoTime() - started) / 6e10;
    Files.writeString(Path.of("reports", "ways.md"), text(told, shops, minutes));
    System.out.println("Written: reports/ways.md.");
  }

  /** Where nothing differs, a window lost is a claim that takes twice as many shops. */
  private static boolean alike(TwoFigures.Kind kind) {
    return kind.lnChar() == 0 && kind.lnClearing() == 0;
  }

  /** What the shops of a kind were told. */
  private record Told(TwoFigures.Kind kind, List<Found> shops) {
    Share share(Predicate<Found> of) {
      return new Share((int) shops.stream().filter(of).count(), shops.size());
    }
  }

  /**
   * What was true of a window.
   *
   * @param charred whether it chars more than was promised
   * @param uncleared whether it clears less than was promised
   */
  private record Kept(boolean charred, boolean uncleared) {}

  /**
   * What one shop was told of lines, which most of its patches are.
   *
   * @param window the window for lines
   * @param circles the window for circles
   * @param pooled the window for lines where nobody noted a figure
   * @param charHolds whether the interval of the shift of char contains the true one
   * @param clearingHolds the same for clearing
   * @param charNamed whether it excludes that there is none
   * @param contest circles against lines
   */
  private record Found(
      Optional<Kept> window,
      Optional<Kept> circles,
      Optional<Kept> pooled,
      boolean charHolds,
      boolean clearingHolds,
      boolean charNamed,
      boolean clearingNamed,
      Contest contest) {}

  private static Found shop(TwoFigures.Kind kind, int number) {
    TwoFigures shop = TwoFigures.draw(kind, Scenario.usual(), number);
    Fitter fitter = Fitter.withDefaults();
    WindowFinder finder = new WindowFinder(fitter);
    RigSetup bench = RigSetup.of(ShopBench.RIG, shop.patches(), ShopBench.DAY);
    Trials lines = shop.asking(Figure.LINE);
    Trials circles = shop.asking(Figure.CIRCLE);
    ModelFit charring = fitter.fit(lines, Event.CHAR);
    ModelFit clearing = fitter.fit(lines, Event.CLEARING);
    ModelFit circleChar = charring.inWay(circles.way());
    ModelFit circleClearing = clearing.inWay(circles.way());
    double lnIntensity = lines.lnReferenceIntensity();
    Estimate charShift = charring.wayEffects().get(0).weight();
    Estimate clearShift = clearing.wayEffects().get(0).weight();
    return new Found(
        finder
            .recommend(lines, bench, ASKED, charring, clearing)
            .chosen()
            .map(box -> kept(box, shop.line())),
        finder
            .recommend(circles, bench, ASKED, circleChar, circleClearing)
            .chosen()
            .map(box -> kept(box, shop.circle())),
        finder.recommend(shop.pooled(), bench, ASKED).chosen().map(box -> kept(box, shop.line())),
        holds(charShift, kind.lnChar()),
        holds(clearShift, kind.lnClearing()),
        !holds(charShift, 0),
        !holds(clearShift, 0),
        Contest.of(
            new Side(circles, circleChar, circleClearing, PASSES, lnIntensity),
            new Side(lines, charring, clearing, PASSES, lnIntensity),
            ASKED));
  }

  private static boolean holds(Estimate interval, double truth) {
    return interval.low() <= truth && truth <= interval.high();
  }

  private static Kept kept(Box box, Truth truth) {
    return new Kept(
        chance(truth.charring(), box.hotCorner()) > ASKED.charRisk(),
        chance(truth.clearing(), box.coldCorner()) < ASKED.clearChance());
  }

  private static double chance(Law law, Forecast at) {
    return law.newBoardChance(at.doseJoulesPerCm2(), at.intensity(), at.passes());
  }

  private static String text(List<Told> told, int shops, double minutes) throws IOException {
    MarkdownTable shifts =
        new MarkdownTable(
            "kind",
            ">interval of char holds",
            ">of clearing",
            ">char said to differ",
            ">clearing said to differ");
    MarkdownTable windows =
        new MarkdownTable(
            "kind",
            ">windows for lines",
            ">char broken for lines",
            ">clearing broken for lines",
            ">windows for circles",
            ">char broken for circles",
            ">clearing broken for circles",
            ">windows where no figure is noted",
            ">either broken for lines");
    MarkdownTable contests =
        new MarkdownTable(
            "kind",
            ">settled",
            ">settled for the worse way",
            ">not settled: median pairs asked for");
    for (Told kind : told) {
      shifts.row(
          kind.kind().code(),
          kind.share(Found::charHolds).words(),
          kind.share(Found::clearingHolds).words(),
          kind.share(Found::charNamed).words(),
          kind.share(Found::clearingNamed).words());
      windows.row(
          kind.kind().code(),
          kind.share(f -> f.window().isPresent()).words(),
          kind.share(f -> f.window().stream().anyMatch(Kept::charred)).words(),
          kind.share(f -> f.window().stream().anyMatch(Kept::uncleared)).words(),
          kind.share(f -> f.circles().isPresent()).words(),
          kind.share(f -> f.circles().stream().anyMatch(Kept::charred)).words(),
          kind.share(f -> f.circles().stream().anyMatch(Kept::uncleared)).words(),
          kind.share(f -> f.pooled().isPresent()).words(),
          kind.share(f -> f.pooled().stream().anyMatch(WaysReport::broken)).words());
      double truth = kind.kind().lnChar() - kind.kind().lnClearing();
      contests.row(
          kind.kind().code(),
          kind.share(f -> f.contest().settled()).words(),
          truth == 0
              ? kind.share(
                      f ->
                          Math.max(f.contest().firstBetter(), 1 - f.contest().firstBetter())
                              >= Contest.SURE)
                  .words()
              : kind.share(
                      f ->
                          truth > 0
                              ? f.contest().firstBetter() <= 1 - Contest.SURE
                              : f.contest().firstBetter() >= Contest.SURE)
                  .words(),
          median(kind.shops()));
    }
    return resource("opening.md")
        .formatted(shops, minutes)
        .concat("\n## Is the difference found?\n\n" + resource("shifts.md") + "\n" + shifts.text())
        .concat("\n## What becomes of the windows\n\n" + resource("windows.md") + "\n")
        .concat(windows.text())
        .concat("\n## Is the better way named?\n\n" + resource("contests.md") + "\n")
        .concat(contests.text());
  }

  private static boolean broken(Kept kept) {
    return kept.charred() || kept.uncleared();
  }

  private static String median(List<Found> shops) {
    int[] pairs =
        shops.stream()
            .map(Found::contest)
            .filter(contest -> !contest.settled())
            .mapToInt(contest -> contest.pairsToSettle().orElse(Contest.MOST_PAIRS + 1))
            .sorted()
            .toArray();
    if (pairs.length == 0) {
      return "none";
    }
    int middle = pairs[pairs.length / 2];
    return middle > Contest.MOST_PAIRS
        ? "over " + Contest.MOST_PAIRS
        : String.format(Locale.ROOT, "%d", middle);
  }

  private static String resource(String name) throws IOException {
    try (InputStream in = WaysReport.class.getResourceAsStream("/ways/" + name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
