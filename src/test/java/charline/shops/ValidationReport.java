package charline.shops;

import charline.shops.DotFigure.Row;
import charline.window.Verdict;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToIntFunction;

/**
 * {@code validation.md} and its figures. What people wrote (what was expected, what surprised, what
 * was changed) comes from {@code src/test/resources/shops}; every number is counted here.
 *
 * @param tallies one per scenario, in order
 * @param run how long it took
 */
record ValidationReport(List<Tally> tallies, String run) {
  private static final String BROKEN_FIGURE = "validation-promises.svg";
  private static final String CLEARING_FIGURE = "validation-clearing.svg";
  private static final String FOUND_FIGURE = "validation-windows.svg";
  private static final String RELIABILITY_FIGURE = "validation-reliability.svg";

  /** Scenarios in which the models' form is the true one and boards are within their prior. */
  private static final List<String> MODEL_TRUE = List.of("usual", "prior", "36x5");

  private static final double ALLOWED = 1 - Judge.ASKED.confidence();

  void write(Path folder) throws IOException {
    Files.createDirectories(folder);
    Files.writeString(
        folder.resolve(BROKEN_FIGURE),
        broken("Windows that char more than promised", Tally.Windows::charBroken).svg());
    Files.writeString(
        folder.resolve(CLEARING_FIGURE),
        broken("Windows that clear less than promised", Tally.Windows::clearingBroken).svg());
    Files.writeString(folder.resolve(FOUND_FIGURE), found().svg());
    Files.writeString(
        folder.resolve(RELIABILITY_FIGURE),
        new ReliabilityFigure(
                "Predicted and observed, all shops",
                Reliability.of(probes(), true),
                Reliability.of(probes(), false))
            .svg());
    Files.writeString(folder.resolve("validation.md"), text());
  }

  private String text() throws IOException {
    StringBuilder text = new StringBuilder();
    text.append(
        said("opening.md")
            .replace("{shops}", String.valueOf(shops()))
            .replace("{kinds}", String.valueOf(tallies.size()))
            .replace("{run}", run));
    section(text, "In short", said("summary.md"));
    section(text, "Expected beforehand", said("expected.md"));
    section(text, "Windows and verdicts", windows());
    section(text, "Promises kept and broken", promises());
    section(text, "A window for one piece", pieces());
    section(text, "What the rest of the log teaches", learned());
    section(text, "Calibration", calibration());
    section(text, "The classical window", classical());
    section(text, "Surprises", said("surprises.md"));
    section(text, "What was changed", said("changed.md"));
    return text.toString();
  }

  private static void section(StringBuilder text, String title, String body) {
    text.append("\n## ").append(title).append("\n\n").append(body.strip()).append('\n');
  }

  private static String said(String name) throws IOException {
    try (InputStream in = ValidationReport.class.getResourceAsStream("/shops/" + name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private int shops() {
    return tallies.stream().mapToInt(t -> t.shops().size()).sum();
  }

  private List<Judged.Probe> probes() {
    return probes(tallies);
  }

  private static List<Judged.Probe> probes(List<Tally> of) {
    return of.stream().flatMap(t -> t.shops().stream()).flatMap(s -> s.probes().stream()).toList();
  }

  private String windows() {
    MarkdownTable table =
        new MarkdownTable(
            "scenario", "true conditions", ">window", ">not yet", ">none", ">unreliable");
    for (Tally t : tallies) {
      table.row(
          t.scenario().code(),
          t.scenario().title(),
          t.windows().share().words(),
          String.valueOf(t.count(Verdict.NOT_YET)),
          String.valueOf(t.count(Verdict.NONE)),
          String.valueOf(t.count(Verdict.UNRELIABLE)));
    }
    return "In brackets: exact 95 % bounds, each one-sided.\n\n"
        + table.text()
        + figure(FOUND_FIGURE, "Windows found by scenario");
  }

  private String promises() {
    MarkdownTable table =
        new MarkdownTable(
            "scenario",
            ">windows",
            ">char promise broken",
            ">mean true char risk, hot corner",
            ">clearing promise broken",
            ">mean true clearing, cold corner",
            ">shops with char broken",
            ">shops with clearing broken");
    for (Tally t : tallies) {
      if (!t.windows().found().isEmpty()) {
        Tally.Windows w = t.windows();
        table.row(
            t.scenario().code(),
            String.valueOf(w.found().size()),
            flagged(w.charBroken()),
            percent(w.meanCharRisk()),
            flagged(w.clearingBroken()),
            percent(w.meanClearing()),
            flagged(w.charBrokenShops()),
            flagged(w.clearingBrokenShops()));
      }
    }
    return """
    Promised with %s confidence: char risk at most %s at the hottest corner, clearing at least %s at the coldest, on a new board.
    So at most one window in ten may break each. **Bold** marks shares whose lower bound is above that.

    """
            .formatted(
                whole(Judge.ASKED.confidence()),
                whole(Judge.ASKED.charRisk()),
                whole(Judge.ASKED.clearChance()))
        + table.text()
        + "\n"
        + flaggedSentence()
        + figure(BROKEN_FIGURE, "Share of windows that break the char promise")
        + figure(CLEARING_FIGURE, "Share of windows that break the clearing promise");
  }

  private String flaggedSentence() {
    List<String> names = new ArrayList<>();
    for (Tally t : tallies) {
      if (t.windows().charBroken().surelyAbove(ALLOWED)
          || t.windows().clearingBroken().surelyAbove(ALLOWED)) {
        names.add(t.scenario().code());
      }
    }
    return names.isEmpty()
        ? "No scenario clearly breaks either promise more often than the confidence allows.\n"
        : "Clearly broken more often than the confidence allows: %s.\n"
            .formatted(String.join(", ", names));
  }

  private static String flagged(Share share) {
    return share.surelyAbove(ALLOWED) ? "**" + share.words() + "**" : share.words();
  }

  private String pieces() throws IOException {
    MarkdownTable table =
        new MarkdownTable(
            "scenario",
            "window of the piece",
            ">found",
            ">char broken, of all pieces",
            ">clearing broken, of all pieces",
            ">browned",
            ">burned");
    for (Tally t : tallies) {
      List<Judged.Piece> all = t.pieces();
      if (!all.isEmpty()) {
        row(table, t, "for any board", Judged.Piece::general, "", "");
        row(table, t, "three clean at the start", Judged.Piece::spare, "", "3");
        row(
            table,
            t,
            "placed",
            Judged.Piece::placed,
            mean(all, Judged.Piece::browned),
            mean(all, Judged.Piece::placing));
        row(table, t, "confirmed", Judged.Piece::confirmed, "", mean(all, Judged.Piece::burned));
      }
    }
    return said("pieces.md").strip() + "\n\n" + table.text();
  }

  private static void row(
      MarkdownTable table,
      Tally tally,
      String name,
      Function<Judged.Piece, Optional<Judged.Kept>> which,
      String browned,
      String burned) {
    Tally.Windows windows = tally.ofPiece(which);
    table.row(
        tally.scenario().code(),
        name,
        windows.share().words(),
        flagged(windows.charBrokenShops()),
        flagged(windows.clearingBrokenShops()),
        browned,
        burned);
  }

  private static String mean(List<Judged.Piece> pieces, ToIntFunction<Judged.Piece> of) {
    return String.format(Locale.ROOT, "%.1f", pieces.stream().mapToInt(of).average().orElse(0));
  }

  private String learned() throws IOException {
    MarkdownTable table =
        new MarkdownTable(
            "scenario",
            ">with four others",
            ">char broken, of all shops",
            ">clearing broken, of all shops",
            ">alone",
            ">char broken, of all shops",
            ">clearing broken, of all shops",
            ">gained",
            ">lost");
    for (Tally t : tallies) {
      Tally.Windows with = t.windows();
      Tally.Windows alone = t.alone();
      int[] pairs = t.pairs(Judged::window, Judged::alone);
      table.row(
          t.scenario().code(),
          with.share().words(),
          flagged(with.charBrokenShops()),
          flagged(with.clearingBrokenShops()),
          alone.share().words(),
          flagged(alone.charBrokenShops()),
          flagged(alone.clearingBrokenShops()),
          String.valueOf(pairs[0]),
          String.valueOf(pairs[1]));
    }
    return said("learned.md").strip() + "\n\n" + table.text();
  }

  private String calibration() {
    List<Tally> trueOnes =
        tallies.stream().filter(t -> MODEL_TRUE.contains(t.scenario().code())).toList();
    MarkdownTable table =
        new MarkdownTable(
            "predicted",
            ">char, all shops",
            ">char, model true",
            ">clearing, all shops",
            ">clearing, model true");
    List<List<Reliability>> columns =
        List.of(
            Reliability.of(probes(), true),
            Reliability.of(probes(trueOnes), true),
            Reliability.of(probes(), false),
            Reliability.of(probes(trueOnes), false));
    for (int k = 0; k < columns.get(0).size(); k++) {
      Reliability first = columns.get(0).get(k);
      List<String> cells = new ArrayList<>();
      cells.add(
          String.format(Locale.ROOT, "%.0f to %.0f %%", 100 * first.from(), 100 * first.to()));
      for (List<Reliability> column : columns) {
        cells.add(column.get(k).happened().words());
      }
      table.row(cells.toArray(String[]::new));
    }
    return """
    In every shop the models predicted the outcome at four settings of its grid, chosen blindly, and one more patch was burned at each on a new board.
    The table shows how often it charred and cleared, by predicted chance (model true: %s):

    """
            .formatted(String.join(", ", MODEL_TRUE))
        + table.text()
        + figure(RELIABILITY_FIGURE, "Predicted chance against what happened")
        + "\n"
        + "How often the true chance at such a setting lay within the posterior's own one-sided 90"
        + " % bound on the unsafe side (90 % if it is honest there), one setting a shop:\n\n"
        + within();
  }

  private String within() {
    MarkdownTable table = new MarkdownTable("scenario", ">char", ">clearing");
    for (Tally t : tallies) {
      table.row(t.scenario().code(), t.withinBound(true).words(), t.withinBound(false).words());
    }
    return table.text();
  }

  private String classical() throws IOException {
    MarkdownTable table =
        new MarkdownTable("scenario", ">windows", ">char promise broken", ">clearing broken");
    for (Tally t : tallies) {
      Tally.Windows w = t.classical();
      table.row(
          t.scenario().code(),
          w.share().words(),
          flagged(w.charBroken()),
          flagged(w.clearingBroken()));
    }
    return said("classical.md").strip() + "\n\n" + table.text();
  }

  private DotFigure broken(String title, Function<Tally.Windows, Share> which) {
    return new DotFigure(
        title,
        "share of windows, with exact 95 % bounds; dashed: what the confidence allows",
        List.of("four other strata in the log", "alone", "classical (random intercept)"),
        rows(which),
        OptionalDouble.of(ALLOWED));
  }

  private DotFigure found() {
    return new DotFigure(
        "Windows found",
        "share of shops, with exact 95 % bounds",
        List.of("four other strata in the log", "alone", "classical (random intercept)"),
        rows(Tally.Windows::share),
        OptionalDouble.empty());
  }

  private List<Row> rows(Function<Tally.Windows, Share> which) {
    return tallies.stream()
        .map(
            t ->
                new Row(
                    t.scenario().code(),
                    List.of(
                        which.apply(t.windows()),
                        which.apply(t.alone()),
                        which.apply(t.classical()))))
        .toList();
  }

  private static String figure(String file, String words) {
    return "\n![%s](%s)\n".formatted(words, file);
  }

  private static String whole(double share) {
    return Math.round(100 * share) + " %";
  }

  private static String percent(OptionalDouble share) {
    return share.isPresent()
        ? String.format(Locale.ROOT, "%.3g %%", 100 * share.getAsDouble())
        : "";
  }
}
