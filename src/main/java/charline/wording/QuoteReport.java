package charline.wording;

import static charline.wording.Table.line;

import charline.answer.QuoteAnswer;
import charline.answer.TrialCase;
import charline.quantity.Figures;
import charline.quote.Quote;
import charline.window.Recommendation;
import java.util.Optional;
import java.util.OptionalDouble;

/** The hours of a job, as text and as JSON. */
public final class QuoteReport {
  private QuoteReport() {}

  /** The coat that the hours are for, where trials mix coats or a tone was asked for. */
  private static Optional<String> coat(TrialCase subject, Recommendation found) {
    return found
        .clearingFit()
        .flatMap(fit -> CoatText.of(fit, found.patches()))
        .or(
            () ->
                subject
                    .question()
                    .coat()
                    .tone()
                    .map(
                        tone ->
                            "For a %s coat; these trials do not mix tones, so the tone changes nothing."
                                .formatted(tone.word())));
  }

  /**
   * The hours as JSON.
   *
   * @param money for an hour, if the price is asked for
   */
  public static Json json(QuoteAnswer answer, OptionalDouble money) {
    Recommendation found = answer.window().found();
    Quote quote = answer.quote().orElseThrow();
    Json json =
        new Json()
            .put("stratum", WindowJson.stratum(found.stratum()))
            .put("rig", found.bench().rig().name())
            .put("coat", found.clearingFit().map(CoatText::json))
            .put("prior", BasisText.json(answer.window().subject().question()))
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
    return PrecautionText.put(
        json.put("warnings", QuoteText.warnings(quote))
            .put("assumptions", QuoteText.assumptions(quote)),
        answer.window().precautions());
  }

  private static Json hours(Json json, Quote.Hours hours) {
    return json.atLeast("low_h", hours.low())
        .put("usual_h", hours.usual())
        .atMost("high_h", hours.high());
  }

  /**
   * The hours for a person.
   *
   * @param money for an hour, if the price is asked for
   */
  public static String text(QuoteAnswer answer, OptionalDouble money) {
    Recommendation found = answer.window().found();
    Quote quote = answer.quote().orElseThrow();
    TrialCase subject = answer.window().subject();
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
    PrecautionText.headline(answer.window().precautions()).ifPresent(words -> line(text, words));
    QuoteText.warnings(quote).forEach(warning -> line(text, "CAUTION: " + warning));
    coat(subject, found).ifPresent(words -> line(text, words));
    BasisText.of(subject.question()).ifPresent(words -> line(text, words));
    text.append('\n');
    Table table = new Table("part", ">low, h", ">usual, h", ">high, h", "how");
    for (Quote.Part part : quote.parts()) {
      row(table, QuoteText.task(part.task()), part.hours(), QuoteText.how(part.task(), quote));
    }
    row(table, "all", total, "");
    money.ifPresent(m -> price(table, total, m));
    text.append(table.text()).append('\n');
    PrecautionText.inBrief(answer.window().precautions()).forEach(caution -> line(text, caution));
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
}
