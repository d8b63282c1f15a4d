package charline.web.pages;

import charline.quantity.Figures;
import charline.quantity.Invariant;
import charline.quantity.Measure;
import charline.quantity.Measure.Quantity;
import charline.quote.Lead;
import charline.quote.Quoting;
import charline.quote.Rates;
import charline.quote.Task;
import charline.refusal.Refusal;
import charline.wording.QuoteText;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What a quote is worked out from, as the fields of a page give it. */
public final class QuoteForm {
  private static final List<Task> TIMED = Arrays.stream(Task.values()).filter(Task::timed).toList();

  private final Context ctx;

  QuoteForm(Context ctx) {
    this.ctx = ctx;
  }

  /**
   * A field.
   *
   * @param name in the address
   * @param label with the unit
   * @param value as it was typed, blank where the usual counts
   * @param usual what counts where nothing is typed
   */
  public record Field(String name, String label, String value, String usual) {}

  /** The names of all fields, so that an address keeps them. */
  static List<String> names() {
    List<String> names = new ArrayList<>(List.of("edges", "efficiency", "day", "contingency"));
    names.addAll(List.of("second", "lead", "rate", "secondrate", "machineday", "wastecost"));
    names.add("smallest");
    TIMED.forEach(task -> names.add(task.key()));
    return names;
  }

  /** Times and shares, each with the usual value. */
  List<Field> times(Quoting usual) {
    List<Field> fields = new ArrayList<>();
    for (Task task : TIMED) {
      fields.add(
          field(
              task.key(),
              "%s, min %s".formatted(capital(QuoteText.task(task)), QuoteText.per(task.per())),
              QuoteText.minutes(task, usual)));
    }
    fields.add(
        field(
            "efficiency",
            "Share of the time with the beam at work, %",
            "%s (%s to %s)"
                .formatted(
                    Asking.percent(usual.efficiency().usual()),
                    Asking.percent(usual.efficiency().low()),
                    Asking.percent(usual.efficiency().high()))));
    fields.add(field("edges", "Factor for edges and mouldings", "1"));
    fields.add(
        field(
            "day",
            "All hours of a day, set-up and fire watch included",
            Figures.shortest(usual.hoursADay())));
    fields.add(
        field("contingency", "Contingency, % of the work", Asking.percent(usual.contingency())));
    fields.add(field("second", "Second person, % of the hours on site", "0"));
    return fields;
  }

  /** What things cost. */
  List<Field> prices() {
    return List.of(
        field("rate", "Price of an hour", "none"),
        field("secondrate", "Price of the second person's hour", "as the first"),
        field("machineday", "The machine for a day", "none"),
        field("wastecost", "Filters, bags and disposal, for the job", "none"),
        field("smallest", "Smallest charge", "none"));
  }

  /** What was said of lead, blank where the log decides. */
  String lead() {
    return Asking.text(ctx, "lead");
  }

  private Field field(String name, String label, String usual) {
    return new Field(name, label, Asking.text(ctx, name), usual);
  }

  private static String capital(String words) {
    return Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }

  /** The estimate that the fields ask for. */
  Quoting quoting(double squareMetres) {
    Quoting quoting = Quoting.usual(squareMetres);
    for (Task task : TIMED) {
      Optional<String> typed = typed(task.key());
      if (typed.isPresent()) {
        double minutes = Measure.parse(typed.get(), Quantity.MINUTES).value();
        quoting =
            quoting.with(
                task, Invariant.notNegative(capital(QuoteText.task(task)), minutes, "min"));
      }
    }
    if (typed("efficiency").isPresent()) {
      quoting = quoting.withEfficiency(Asking.share(ctx, "efficiency", 0));
    }
    if (typed("edges").isPresent()) {
      quoting = quoting.withEdges(Measure.plainNumber(typed("edges").get()));
    }
    if (typed("day").isPresent()) {
      quoting = quoting.withHoursADay(Measure.plainNumber(typed("day").get()));
    }
    if (typed("contingency").isPresent()) {
      quoting = quoting.withContingency(Asking.share(ctx, "contingency", 0));
    }
    if (typed("second").isPresent()) {
      quoting = quoting.withSecondPerson(Asking.share(ctx, "second", 0));
    }
    return typed("lead").isPresent() ? quoting.with(Lead.ofWord(lead())) : quoting;
  }

  Rates rates() {
    if (typed("secondrate").isPresent() && typed("second").isEmpty()) {
      throw Refusal.usage(
          "The second person has a price but no hours; enter their share of the hours on site.");
    }
    return new Rates(
        money("rate"),
        money("secondrate"),
        money("machineday"),
        money("wastecost"),
        money("smallest"));
  }

  private OptionalDouble money(String name) {
    Optional<String> typed = typed(name);
    return typed.isPresent()
        ? OptionalDouble.of(Measure.plainNumber(typed.get()))
        : OptionalDouble.empty();
  }

  private Optional<String> typed(String name) {
    return Optional.of(Asking.text(ctx, name)).filter(text -> !text.isEmpty());
  }
}
