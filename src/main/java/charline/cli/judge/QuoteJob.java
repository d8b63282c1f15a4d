package charline.cli.judge;

import charline.cli.desk.Desk;
import charline.cli.desk.Typed;
import charline.cli.desk.Work;
import charline.cli.render.Json;
import charline.cli.render.JsonReply;
import charline.cli.render.Table;
import charline.log.Logbook;
import charline.model.Fitter;
import charline.quantity.Figures;
import charline.quantity.Invariant;
import charline.quantity.Measure.Quantity;
import charline.quote.Quote;
import charline.quote.Quoting;
import charline.window.Recommendation;
import charline.window.Verdict;
import charline.window.WindowFinder;
import charline.wording.NextStepText;
import charline.wording.QuoteText;
import charline.wording.ReasonText;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code quote}. */
@Command(
    name = "quote",
    header = "Reckon the hours of a job from its window.",
    description =
        "Hours (h) as a range with its parts: beam and handling at the window's start setting,"
            + " cooling, test patches, set-up, masking and fire watch. Exit code 1 means: no"
            + " window, so no quote.",
    footer = {
      "",
      "Examples:",
      "  charline quote latex pine --area 4.5m2",
      "  charline quote latex pine --area 48ft2 --edges 1.4 --efficiency 55%% --rate 65",
      "  charline quote latex pine --area 4.5m2 --masking 15 --fire-watch 2h"
    })
public final class QuoteJob extends Work {
  @Option(names = "--area", paramLabel = "AREA", required = true, description = "Area, in m2.")
  private String area;

  @Option(
      names = "--edges",
      paramLabel = "FACTOR",
      defaultValue = "1",
      description = "Edges and mouldings take the work this many times as long. Default: 1.")
  private String edges;

  @Option(
      names = "--efficiency",
      paramLabel = "SHARE",
      description = "Share of the time with the beam at work, in %%. Default: 60 (50 to 70).")
  private String efficiency;

  @Option(
      names = "--setup",
      paramLabel = "TIME",
      description = "Set-up and clean-up of a day, in min. Default: 60 (45 to 90).")
  private String setup;

  @Option(
      names = "--masking",
      paramLabel = "TIME",
      description = "Masking of a square metre, in min. Default: 10 (5 to 20).")
  private String masking;

  @Option(
      names = "--cooling",
      paramLabel = "TIME",
      description =
          "Rest between two passes, until the wood is cold, in min. Default: 5 (2 to 10).")
  private String cooling;

  @Option(
      names = "--fire-watch",
      paramLabel = "TIME",
      description =
          "Watch after the last pass of a day, in min. Default: 60 (to 240), the least by NFPA 51B;"
              + " your insurer or permit may ask for more.")
  private String fireWatch;

  @Option(
      names = "--rate",
      paramLabel = "MONEY",
      description = "Money for an hour, in your own currency: adds the price.")
  private String rate;

  @Mixin private AskedOptions limits;
  @Mixin private StratumOptions trials;
  @Mixin private BorrowOption borrowing;
  @Mixin private JsonReply reply;

  public QuoteJob(Desk desk) {
    super(desk);
  }

  @Override
  public Integer call() {
    Quoting quoting = quoting();
    OptionalDouble money =
        rate == null
            ? OptionalDouble.empty()
            : OptionalDouble.of(Typed.plainNumber("--rate", rate));
    money.ifPresent(m -> Invariant.positive("--rate", m, "an hour"));
    try (Logbook log = desk.logToRead()) {
      StratumOptions.Case chosen = trials.choose(log, desk);
      Recommendation found =
          new WindowFinder(
                  borrowing.fitters(log, trials, Fitter.withDefaults()).apply(chosen.trials()))
              .recommend(chosen.trials(), chosen.bench(), limits.asked(trials.acceptTint()));
      if (found.verdict() != Verdict.WINDOW) {
        desk.err()
            .println(
                "A quote rests on a window, and there is none for %s: %s %s"
                    .formatted(
                        found.stratum().words(), ReasonText.of(found), NextStepText.of(found)));
        return NO;
      }
      Quote quote = quoting.of(found);
      ValidityWords validity = ValidityWords.of(chosen);
      reply.print(
          desk.out(),
          () -> validity.json(json(found, quote, money)),
          () -> validity.text() + text(found, coat(found), quote, money));
      return DONE;
    }
  }

  private Quoting quoting() {
    Quoting quoting =
        Quoting.usual(Typed.measure("--area", area, Quantity.SURFACE))
            .withEdges(Typed.plainNumber("--edges", edges));
    if (efficiency != null) {
      quoting = quoting.withEfficiency(Typed.chance("--efficiency", efficiency));
    }
    if (setup != null) {
      quoting = quoting.withSetUp(minutes("--setup", setup));
    }
    if (masking != null) {
      quoting = quoting.withMasking(minutes("--masking", masking));
    }
    if (cooling != null) {
      quoting = quoting.withCooling(minutes("--cooling", cooling));
    }
    if (fireWatch != null) {
      quoting = quoting.withFireWatch(minutes("--fire-watch", fireWatch));
    }
    return quoting;
  }

  private static double minutes(String option, String text) {
    return Invariant.notNegative(option, Typed.measure(option, text, Quantity.MINUTES), "min");
  }

  /** The coat that the hours are for, where trials mix coats or a tone was asked for. */
  private Optional<String> coat(Recommendation found) {
    return found
        .clearingFit()
        .flatMap(fit -> CoatText.of(fit, found.patches()))
        .or(
            () ->
                trials
                    .tone()
                    .map(
                        tone ->
                            "For a %s coat; these trials do not mix tones, so the tone changes nothing."
                                .formatted(tone.word())));
  }

  private static Json json(Recommendation found, Quote quote, OptionalDouble money) {
    Json json =
        new Json()
            .put("stratum", WindowJson.stratum(found.stratum()))
            .put("rig", found.bench().rig().name())
            .put("coat", found.clearingFit().map(CoatText::json))
            .put("area_m2", quote.areaSquareMetres())
            .put(
                "parts",
                quote.parts().stream()
                    .map(
                        p ->
                            hours(new Json().put("part", QuoteText.task(p.task())), p.hours())
                                .put("how", QuoteText.how(p.task(), quote)))
                    .toList())
            .put("total", hours(new Json(), quote.total()))
            .put("rate_per_h", money);
    money.ifPresent(
        m -> {
          Quote.Hours t = quote.total();
          json.atLeast("price_low", t.low() * m)
              .put("price_usual", t.usual() * m)
              .atMost("price_high", t.high() * m);
        });
    return json.put("warnings", QuoteText.warnings(quote))
        .put("assumptions", QuoteText.assumptions(quote));
  }

  private static Json hours(Json json, Quote.Hours hours) {
    return json.atLeast("low_h", hours.low())
        .put("usual_h", hours.usual())
        .atMost("high_h", hours.high());
  }

  private static String text(
      Recommendation found, Optional<String> coat, Quote quote, OptionalDouble money) {
    StringBuilder text = new StringBuilder();
    Quote.Hours total = quote.total();
    line(
        text,
        "%s, rig %s, %s m2: %s h, from %s to %s h."
            .formatted(
                found.stratum().words(),
                found.bench().rig().name(),
                Figures.three(quote.areaSquareMetres()),
                Figures.three(total.usual()),
                Figures.threeDown(total.low()),
                Figures.threeUp(total.high())));
    QuoteText.warnings(quote).forEach(warning -> line(text, "CAUTION: " + warning));
    coat.ifPresent(words -> line(text, words));
    text.append('\n');
    Table table = new Table("part", ">low, h", ">usual, h", ">high, h", "how");
    for (Quote.Part part : quote.parts()) {
      row(table, QuoteText.task(part.task()), part.hours(), QuoteText.how(part.task(), quote));
    }
    row(table, "all", total, "");
    money.ifPresent(m -> price(table, total, m));
    text.append(table.text()).append('\n');
    line(text, "Assumed: " + String.join(" ", QuoteText.assumptions(quote)));
    return text.toString();
  }

  private static void price(Table table, Quote.Hours total, double rate) {
    table.row(
        "price",
        Figures.threeDown(total.low() * rate),
        Figures.three(total.usual() * rate),
        Figures.threeUp(total.high() * rate),
        "at %s an hour".formatted(Figures.plain(rate)));
  }

  private static void row(Table table, String name, Quote.Hours hours, String how) {
    table.row(
        name,
        Figures.threeDown(hours.low()),
        Figures.three(hours.usual()),
        Figures.threeUp(hours.high()),
        how);
  }

  private static void line(StringBuilder text, String sentence) {
    text.append(Table.paragraph(sentence)).append('\n');
  }
}
