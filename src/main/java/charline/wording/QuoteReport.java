package charline.wording;

import static charline.wording.Table.line;

import charline.answer.QuoteAnswer;
import charline.answer.TrialCase;
import charline.quantity.Figures;
import charline.quote.Lead;
import charline.quote.Price;
import charline.quote.Quote;
import charline.quote.Rates;
import charline.quote.Span;
import charline.window.Recommendation;
import charline.window.Standing;
import java.util.Optional;

/** The hours of a job, as text and as JSON. */
public final class QuoteReport {
  private QuoteReport() {}

  /** The coat that the hours are for, where trials mix coats or a tone was asked for. */
  private static Optional<String> coat(TrialCase subject, Recommendation found) {
    return WayText.of(found.charFit(), found.clearingFit(), found.patches())
        .or(
            () ->
                subject
                    .question()
                    .way()
                    .coat()
                    .tone()
                    .map(
                        tone ->
                            "For a %s coat; these trials do not mix tones, so the tone changes nothing."
                                .formatted(tone.word())));
  }

  /** The hours as JSON, and the price as far as rates are known. */
  public static Json json(QuoteAnswer answer, Rates rates) {
    Recommendation found = answer.window().found();
    Quote quote = answer.quote().orElseThrow();
    Json json =
        new Json()
            .put("stratum", WindowJson.stratum(found.stratum()))
            .put("rig", found.bench().rig().name())
            .put("standing", found.standing().map(Standing::word))
            .put("piece", answer.window().piece().map(piece -> PieceText.json(piece, found)))
            .put("coat", found.clearingFit().map(WayText::coatJson))
            .put("prior", BasisText.json(answer.window().subject().question()))
            .put("area_m2", quote.areaSquareMetres())
            .put("overlap", found.bench().strokes().overlap())
            .put("lead", quote.basis().quoting().lead().map(Lead::word))
            .put("charred_spots", span(quote.basis().spots()))
            .put(
                "parts",
                quote.parts().stream()
                    .map(
                        p ->
                            hours(
                                    new Json()
                                        .put("key", p.task().key())
                                        .put("part", QuoteText.task(p.task())),
                                    p.hours())
                                .put("how", QuoteText.how(p.task(), quote)))
                    .toList())
            .put("on_site", hours(new Json(), quote.onSite()))
            .put("second_person", quote.secondPerson().map(hours -> hours(new Json(), hours)))
            .put("total", hours(new Json(), quote.total()))
            .put("day_h", quote.basis().quoting().hoursADay())
            .put(
                "days",
                new Json()
                    .put("low", quote.basis().days().low())
                    .put("usual", quote.basis().days().usual())
                    .put("high", quote.basis().days().high()))
            .put("rate_per_h", rates.hour());
    quote.price(rates).ifPresent(price -> price(json, price));
    return PrecautionText.put(
        json.put("provisos", ProvisoText.of(found))
            .put("warnings", QuoteText.warnings(answer))
            .put("assumptions", QuoteText.assumptions(quote)),
        answer.window().precautions());
  }

  private static void price(Json json, Price price) {
    json.put(
            "price_parts",
            price.lines().stream()
                .map(
                    line ->
                        span(line.cost())
                            .put("key", line.item().key())
                            .put("item", QuoteText.item(line.item())))
                .toList())
        .put("price_sum", span(price.sum()))
        .put("smallest_charge", price.smallest())
        .atLeast("price_low", price.charged().low())
        .put("price_usual", price.charged().usual())
        .atMost("price_high", price.charged().high());
  }

  private static Json span(Span span) {
    return new Json()
        .atLeast("low", span.low())
        .put("usual", span.usual())
        .atMost("high", span.high());
  }

  private static Json hours(Json json, Span hours) {
    return json.atLeast("low_h", hours.low())
        .put("usual_h", hours.usual())
        .atMost("high_h", hours.high());
  }

  /** The hours for a person, and the price as far as rates are known. */
  public static String text(QuoteAnswer answer, Rates rates) {
    Recommendation found = answer.window().found();
    Quote quote = answer.quote().orElseThrow();
    TrialCase subject = answer.window().subject();
    StringBuilder text = new StringBuilder();
    line(text, headline(answer));
    PrecautionText.headline(answer.window().precautions()).ifPresent(words -> line(text, words));
    standing(found).ifPresent(words -> line(text, words));
    answer.window().piece().ifPresent(piece -> line(text, PieceText.paragraph(piece)));
    QuoteText.warnings(answer).forEach(warning -> line(text, "CAUTION: " + warning));
    ProvisoText.of(found).forEach(proviso -> line(text, "MIND: " + proviso));
    coat(subject, found).ifPresent(words -> line(text, words));
    AskedText.of(found, subject.question().job()).ifPresent(words -> line(text, words));
    BasisText.of(subject.question()).ifPresent(words -> line(text, words));
    text.append('\n');
    Table table = new Table("part", ">low, h", ">usual, h", ">high, h", "how");
    for (Quote.Part part : quote.parts()) {
      row(table, QuoteText.task(part.task()), part.hours(), QuoteText.how(part.task(), quote));
    }
    row(table, "on site", quote.onSite(), QuoteText.days(quote));
    quote
        .secondPerson()
        .ifPresent(
            hours -> {
              row(table, "second person", hours, QuoteText.secondPerson(quote));
              row(table, "all hours", quote.total(), "");
            });
    text.append(table.text()).append('\n');
    quote.price(rates).ifPresent(price -> text.append(money(price, rates)).append('\n'));
    PrecautionText.inBrief(answer.window().precautions()).forEach(caution -> line(text, caution));
    line(text, "Assumed: " + String.join(" ", QuoteText.assumptions(quote)));
    return text.toString();
  }

  /** How settled the window is that the hours rest on, where it is not. */
  public static Optional<String> standing(Recommendation found) {
    return found
        .standing()
        .map(
            standing ->
                "The window behind these hours%s is %s."
                    .formatted(
                        found
                            .piece()
                            .map(piece -> ", for board %s alone,".formatted(piece.name()))
                            .orElse(""),
                        standing.word()));
  }

  /** The job and its hours in a sentence. */
  public static String headline(QuoteAnswer answer) {
    Recommendation found = answer.window().found();
    Quote quote = answer.quote().orElseThrow();
    Span total = quote.total();
    return "%s, rig %s, %s m² in strokes overlapping %s: %s h, from %s to %s h%s; %s."
        .formatted(
            found.stratum().words(),
            found.bench().rig().name(),
            Figures.three(quote.areaSquareMetres()),
            Figures.share(found.bench().strokes().overlap()),
            QuoteText.hundredths(total.usual()),
            QuoteText.hundredths(total.low()),
            QuoteText.hundredths(total.high()),
            quote.secondPerson().isPresent() ? ", the second person's included" : "",
            QuoteText.days(quote));
  }

  private static String money(Price price, Rates rates) {
    Table table = new Table("price", ">low", ">usual", ">high", "how");
    for (Price.Line line : price.lines()) {
      row(table, QuoteText.item(line.item()), line.cost(), rate(line.item(), rates));
    }
    row(table, "sum", price.sum(), "");
    if (price.smallest().isPresent()) {
      row(
          table,
          "charged",
          price.charged(),
          "at least the smallest charge, " + Figures.plain(price.smallest().getAsDouble()));
    }
    return table.text();
  }

  /** At what rate an item is priced. */
  public static String rate(Price.Item item, Rates rates) {
    return switch (item) {
      case HOURS -> "at %s an hour".formatted(Figures.plain(rates.hour().orElseThrow()));
      case SECOND_PERSON ->
          "at %s an hour"
              .formatted(
                  Figures.plain(rates.secondHour().orElseGet(() -> rates.hour().orElseThrow())));
      case MACHINE -> "at %s a day".formatted(Figures.plain(rates.machineDay().orElseThrow()));
      case WASTE -> "for the job";
    };
  }

  private static void row(Table table, String name, Span hours, String how) {
    table.row(
        name,
        QuoteText.hundredths(hours.low()),
        QuoteText.hundredths(hours.usual()),
        QuoteText.hundredths(hours.high()),
        how);
  }
}
