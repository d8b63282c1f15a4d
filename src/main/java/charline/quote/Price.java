package charline.quote;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a job costs, in hundredths of the person's money, with its parts, which add up.
 *
 * @param lines each item with its cost
 * @param smallest the least that is charged, if there is one
 */
public record Price(List<Line> lines, OptionalDouble smallest) {
  /** What costs money. */
  public enum Item {
    HOURS("hours"),
    SECOND_PERSON("second_person"),
    MACHINE("machine"),
    WASTE("waste");

    private final String key;

    Item(String key) {
      this.key = key;
    }

    /** Its name in files. */
    public String key() {
      return key;
    }
  }

  /**
   * One item.
   *
   * @param cost low, usual, high
   */
  public record Line(Item item, Span cost) {}

  public Price {
    lines = List.copyOf(lines);
  }

  /** The price of a quote, as far as rates are known; empty where none is. */
  static Optional<Price> of(Quote quote, Rates rates) {
    List<Line> lines = new ArrayList<>();
    add(lines, Item.HOURS, quote.onSite(), rates.hour());
    quote
        .secondPerson()
        .ifPresent(
            hours ->
                add(
                    lines,
                    Item.SECOND_PERSON,
                    hours,
                    rates.secondHour().isPresent() ? rates.secondHour() : rates.hour()));
    Counts days = quote.basis().days();
    add(lines, Item.MACHINE, new Span(days.low(), days.usual(), days.high()), rates.machineDay());
    add(lines, Item.WASTE, Span.sure(1), rates.waste());
    if (lines.isEmpty() && rates.smallest().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(new Price(lines, rates.smallest()));
  }

  private static void add(List<Line> lines, Item item, Span times, OptionalDouble rate) {
    rate.ifPresent(money -> lines.add(new Line(item, times.times(money).rounded())));
  }

  /** All items together. */
  public Span sum() {
    return lines.stream().map(Line::cost).reduce(Span.NONE, Span::plusExactly);
  }

  /** The sum, or the smallest charge where that is more. */
  public Span charged() {
    double least = smallest.orElse(0);
    Span sum = sum();
    return new Span(
        Math.max(least, sum.low()), Math.max(least, sum.usual()), Math.max(least, sum.high()));
  }
}
