package charline.web.pages;

import charline.answer.QuoteAnswer;
import charline.answer.WindowAnswer;
import charline.quote.Lead;
import charline.quote.Price;
import charline.quote.Quote;
import charline.quote.Rates;
import charline.quote.Span;
import charline.trial.Stratum;
import charline.wording.BriefList;
import charline.wording.PieceText;
import charline.wording.ProvisoText;
import charline.wording.QuoteReport;
import charline.wording.QuoteText;
import charline.wording.ReasonText;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The hours of a job as the page shows them.
 *
 * @param windowLink the window they rest on
 * @param refusal why there are no hours, if so
 * @param headline the hours in a sentence, blank where there are none
 * @param warnings what must be known first
 * @param hours every part, then the sums
 * @param prices every item, then the sums; none where no rate was given
 * @param assumptions what is taken for granted
 * @param limits the fields of the window
 * @param form the fields of the quote
 */
public record QuoteView(
    Stratum stratum,
    String windowLink,
    Optional<String> refusal,
    String headline,
    List<String> warnings,
    List<Row> hours,
    List<Row> prices,
    List<String> assumptions,
    LimitFields limits,
    Form form) {

  /**
   * A line of figures.
   *
   * @param sum true for a sum of those above
   */
  public record Row(String name, String low, String usual, String high, String how, boolean sum) {}

  /** The fields. */
  public record Form(List<QuoteForm.Field> times, List<QuoteForm.Field> prices, String lead) {
    /** Words for what is known of lead. */
    public List<String> leads() {
      return Arrays.stream(Lead.values()).map(Lead::word).toList();
    }
  }

  /** The hours, where there is a window. */
  static QuoteView of(
      QuoteAnswer answer, Rates rates, String query, LimitFields limits, Form form) {
    WindowAnswer window = answer.window();
    List<String> warnings = new ArrayList<>(ProvisoText.of(window.found()));
    if (answer.quote().isEmpty()) {
      return new QuoteView(
          window.found().stratum(),
          "/window?" + query,
          Optional.of(
              "A quote needs a window, and there is none: %s %s"
                  .formatted(ReasonText.of(window.found()), BriefList.paragraph(window.next()))),
          "",
          warnings,
          List.of(),
          List.of(),
          List.of(),
          limits,
          form);
    }
    Quote quote = answer.quote().get();
    warnings.addAll(0, QuoteText.warnings(answer));
    QuoteReport.standing(window.found()).ifPresent(warnings::add);
    return new QuoteView(
        window.found().stratum(),
        "/window?" + query,
        Optional.empty(),
        QuoteReport.headline(answer),
        warnings,
        hours(quote),
        quote.price(rates).map(price -> prices(price, rates)).orElse(List.of()),
        Stream.concat(
                window.piece().map(PieceText::of).orElse(List.of()).stream(),
                QuoteText.assumptions(quote).stream())
            .toList(),
        limits,
        form);
  }

  /** Only the fields, where no area was given yet. */
  static QuoteView asking(Stratum stratum, String query, LimitFields limits, Form form) {
    return new QuoteView(
        stratum,
        "/window?" + query,
        Optional.empty(),
        "",
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        limits,
        form);
  }

  private static List<Row> hours(Quote quote) {
    List<Row> rows = new ArrayList<>();
    quote
        .parts()
        .forEach(
            part ->
                rows.add(
                    row(
                        QuoteText.task(part.task()),
                        part.hours(),
                        QuoteText.how(part.task(), quote),
                        false)));
    rows.add(row("on site", quote.onSite(), QuoteText.days(quote), true));
    quote
        .secondPerson()
        .ifPresent(
            hours -> {
              rows.add(row("second person", hours, QuoteText.secondPerson(quote), false));
              rows.add(row("all hours", quote.total(), "", true));
            });
    return rows;
  }

  private static List<Row> prices(Price price, Rates rates) {
    List<Row> rows = new ArrayList<>();
    price
        .lines()
        .forEach(
            line ->
                rows.add(
                    row(
                        QuoteText.item(line.item()),
                        line.cost(),
                        QuoteReport.rate(line.item(), rates),
                        false)));
    rows.add(row("sum", price.sum(), "", true));
    if (price.smallest().isPresent()) {
      rows.add(row("charged", price.charged(), "at least the smallest charge", true));
    }
    return rows;
  }

  private static Row row(String name, Span span, String how, boolean sum) {
    return new Row(
        name,
        QuoteText.hundredths(span.low()),
        QuoteText.hundredths(span.usual()),
        QuoteText.hundredths(span.high()),
        how,
        sum);
  }
}
