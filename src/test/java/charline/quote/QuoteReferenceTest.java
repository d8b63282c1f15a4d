package charline.quote;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import charline.exposure.AreaRate;
import charline.exposure.HandPass;
import charline.model.Posterior;
import charline.model.ReferenceStrata;
import charline.model.Trials;
import charline.plan.InventedShop;
import charline.refusal.Refusal;
import charline.trial.Pieces;
import charline.window.Forecast;
import charline.window.Recommendation;
import charline.window.Requirements;
import charline.window.RigSetup;
import charline.window.WindowFinder;
import charline.wording.QuoteText;
import java.math.BigDecimal;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Worked by hand: 60 mm wide at 30 mm/s is 18 cm2/s or 6.48 m2/h per pass; 4.5 m2 three times over
 * is 13.5 m2; at 60 % hand efficiency 13.5 / (6.48 x 0.6) = 3.47222 h. The formula (width x speed,
 * over passes, times a hand efficiency) is common practice, no published source.
 */
class QuoteReferenceTest {
  private static final AreaRate ONE_PASS = new HandPass(60, 30).areaRate();

  @Test
  void the_worked_job_takes_three_and_a_half_hours_at_the_work() {
    assertThat(ONE_PASS.squareMetresPerHour()).isCloseTo(6.48, within(1e-12));
    assertThat(Quote.workHours(4.5, ONE_PASS, 3, 0.6)).isCloseTo(3.47222, within(5e-6));
  }

  @Test
  void the_parts_are_shown_and_add_up() {
    Quote quote = Quoting.usual(4.5).of(ONE_PASS, new Counts(3, 3, 3), Span.NONE);

    assertThat(quote.parts().stream().map(p -> QuoteText.task(p.task())))
        .containsExactly(
            "beam and handling",
            "cooling",
            "rework of char",
            "test patches",
            "masking",
            "sanding after",
            "contingency",
            "set-up",
            "waste and filters",
            "fire watch");
    assertThat(hours(quote, Task.BEAM)).isEqualTo(new Span(2.97, 3.47, 4.17));
    assertThat(QuoteText.how(Task.BEAM, quote))
        .isEqualTo("4.5 m² at 6.48 m²/h per pass, 3 passes, hand efficiency 60 % (50 % to 70 %)");
    // once: 3.4722 h, 2 x 5, 3 x 10, 45 and 67.5 min, and a tenth of their 6.0139 h, which
    // takes two days; a day: 60, 15 and 60 min.
    // Each part in hundredths: 3.47 + 0.17 + 0.5 + 0.75 + 1.13 + 0.6 + 2 + 0.5 + 2
    assertThat(quote.onSite().usual()).isEqualTo(11.12);
    assertThat(hours(quote, Task.CONTINGENCY).usual()).isEqualTo(0.6);
    assertThat(quote.onSite().low()).isLessThan(quote.onSite().usual());
    assertThat(quote.onSite().high()).isGreaterThan(quote.onSite().usual());
  }

  @Test
  void what_the_person_knows_takes_the_place_of_the_usual_range() {
    Quote quote =
        Quoting.usual(4.5)
            .withEfficiency(0.6)
            .with(Task.SET_UP, 30)
            .with(Task.WASTE, 12)
            .with(Task.MASKING, 12)
            .with(Task.SANDING, 20)
            .with(Task.COOLING, 4)
            .with(Task.REWORK, 30)
            .with(Task.CONTAINMENT, 90)
            .with(Task.CLEARANCE, 60)
            .with(Task.FIRE_WATCH, 120)
            .withContingency(0.2)
            .with(Lead.FOUND)
            .of(ONE_PASS, new Counts(3, 3, 3), Span.sure(4));

    // Only the test patches stay a range, and what is a share of all.
    assertThat(quote.parts())
        .filteredOn(p -> p.task() != Task.TEST_PATCHES && p.task() != Task.CONTINGENCY)
        .allMatch(p -> p.hours().low() == p.hours().usual())
        .extracting(p -> p.hours().high())
        // 3.47222 h, 2 x 4 min, 4 x 30 min, 4.5 x 12 and 4.5 x 20 min, 90 and 60 min, and for each
        // of three days 30, 12 and 120 min;
        // an end that was known is rounded outward too, so the beam is 3.48 h at the high end
        .containsExactly(3.48, 0.14, 2.0, 0.9, 1.5, 1.5, 1.0, 1.5, 0.6, 6.0);
    assertThat(QuoteText.warnings(quote))
        .hasSize(1)
        .first()
        .asString()
        .startsWith("Lead was found");
  }

  /** NFPA 51B (2019): a fire watch of one hour after hot work. */
  @Test
  void a_fire_watch_below_an_hour_is_quoted_only_with_a_plain_word() {
    assertThat(QuoteText.warnings(Quoting.usual(4.5).of(ONE_PASS, new Counts(3, 3, 3), Span.NONE)))
        .isEmpty();
    assertThat(
            QuoteText.warnings(
                Quoting.usual(4.5)
                    .with(Task.FIRE_WATCH, 60)
                    .of(ONE_PASS, new Counts(3, 3, 3), Span.NONE)))
        .isEmpty();
    assertThat(
            QuoteText.warnings(
                Quoting.usual(4.5)
                    .with(Task.FIRE_WATCH, 30)
                    .of(ONE_PASS, new Counts(3, 3, 3), Span.NONE)))
        .containsExactly(
            "A fire watch of 30 min is less than the cautions ask for: NFPA 51B (2019) has one hour"
                + " after the last pass, longer over hidden cavities; insurers and permits may ask"
                + " for more. Keep the hour, and quote it.");
  }

  @Test
  void edges_stretch_the_work_alone() {
    Quote flat = Quoting.usual(4.5).of(ONE_PASS, new Counts(3, 3, 3), Span.NONE);
    Quote moulded = Quoting.usual(4.5).withEdges(1.5).of(ONE_PASS, new Counts(3, 3, 3), Span.NONE);

    // 3.47222 h times 1.5 is 5.20833 h
    assertThat(hours(moulded, Task.BEAM).usual()).isEqualTo(5.21);
    assertThat(hours(moulded, Task.MASKING)).isEqualTo(hours(flat, Task.MASKING));
  }

  /**
   * 20 m2 once over at 6.48 m2/h and 60 % is 5.14 h; 20 x (10 + 15) min of masking and sanding and
   * 3 x 10 min of patches make 13.98 h, a tenth more 15.38 h. A day of eight hours has 5.75 h
   * beside set-up, waste and fire watch, so three days. At the high end 25.91 h at four hours a day
   * are 7.
   */
  @Test
  void days_come_from_all_hours_of_a_day() {
    Quote quote = Quoting.usual(20).of(ONE_PASS, new Counts(1, 1, 1), Span.NONE);

    assertThat(quote.basis().days().usual()).isEqualTo(3);
    assertThat(hours(quote, Task.FIRE_WATCH).usual()).isEqualTo(3);
    assertThat(hours(quote, Task.SET_UP)).isEqualTo(new Span(0.75 * 2, 3, 1.5 * 7));
    assertThat(QuoteText.assumptions(quote)).contains(days("3 days (2 to 7) of up to 8 h"));
    assertThat(quote.onSite().usual()).isLessThanOrEqualTo(3 * 8);
  }

  @Test
  void no_day_holds_more_hours_than_it_has_and_no_day_fewer_would_do() {
    Random random = new Random(2026);
    for (int k = 0; k < 500; k++) {
      Quoting quoting =
          Quoting.usual(0.2 + 60 * random.nextDouble())
              .withHoursADay(5 + 9 * random.nextDouble())
              .withContingency(random.nextDouble())
              .with(Lead.values()[random.nextInt(3)]);
      Quote quote =
          quoting.of(
              ONE_PASS,
              new Counts(1, 1 + random.nextInt(3), 5),
              new Span(0, 3 * random.nextDouble(), 9));
      Span all = quote.onSite();
      Counts days = quote.basis().days();
      double hours = quoting.hoursADay();
      double slack = 0.2; // hundredths of an hour that rounding leaves, part by part
      assertThat(all.low()).isLessThanOrEqualTo(days.low() * hours + slack);
      assertThat(all.usual()).isLessThanOrEqualTo(days.usual() * hours + slack);
      assertThat(all.high()).isLessThanOrEqualTo(days.high() * hours + slack);
      double daily = daily(quote).usual() / days.usual();
      if (days.usual() > 1) {
        assertThat(all.usual() - daily).isGreaterThan((days.usual() - 1) * hours - slack);
      }
    }
  }

  private static Span daily(Quote quote) {
    return quote.parts().stream()
        .filter(p -> p.task().per() == Task.Per.DAY)
        .map(Quote.Part::hours)
        .reduce(Span.NONE, Span::plus);
  }

  @Test
  void a_day_that_set_up_and_fire_watch_fill_is_refused() {
    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(
            () -> Quoting.usual(4.5).withHoursADay(4).of(ONE_PASS, new Counts(1, 1, 1), Span.NONE))
        .withMessage(
            "A day of 4 h has no time for the work: set-up, waste and fire watch alone take up to 4"
                + " h. Make the day longer, or name shorter times for them.");
  }

  private static String days(String words) {
    return "The work takes %s, set-up, waste and fire watch of every day included; the other parts come once."
        .formatted(words);
  }

  private static Span hours(Quote quote, Task task) {
    return quote.parts().stream().filter(p -> p.task() == task).findAny().orElseThrow().hours();
  }

  /** Whatever is in the quote: two decimals of every part add up to the two decimals of the sum. */
  @Test
  void parts_add_up_exactly_as_printed() {
    Random random = new Random(7);
    for (int k = 0; k < 500; k++) {
      Quote quote =
          Quoting.usual(0.1 + 40 * random.nextDouble())
              .withSecondPerson(0.01 + 0.9 * random.nextDouble())
              .with(Lead.values()[random.nextInt(3)])
              .of(
                  ONE_PASS,
                  new Counts(1, 2, 4),
                  new Span(0, 5 * random.nextDouble(), 5 + 20 * random.nextDouble()));
      assertThat(printed(quote.parts().stream().map(Quote.Part::hours), Span::low))
          .isEqualByComparingTo(QuoteText.hundredths(quote.onSite().low()));
      assertThat(printed(quote.parts().stream().map(Quote.Part::hours), Span::usual))
          .isEqualByComparingTo(QuoteText.hundredths(quote.onSite().usual()));
      assertThat(printed(quote.parts().stream().map(Quote.Part::hours), Span::high))
          .isEqualByComparingTo(QuoteText.hundredths(quote.onSite().high()));
      assertThat(
              printed(Stream.of(quote.onSite(), quote.secondPerson().orElseThrow()), Span::usual))
          .isEqualByComparingTo(QuoteText.hundredths(quote.total().usual()));
      Rates rates =
          new Rates(
              OptionalDouble.of(64.37),
              OptionalDouble.of(41.13),
              OptionalDouble.of(240.99),
              OptionalDouble.of(85),
              OptionalDouble.empty());
      Price price = quote.price(rates).orElseThrow();
      assertThat(price.lines()).hasSize(4);
      assertThat(printed(price.lines().stream().map(Price.Line::cost), Span::high))
          .isEqualByComparingTo(QuoteText.hundredths(price.sum().high()));
    }
  }

  private static BigDecimal printed(Stream<Span> spans, ToDoubleFunction<Span> end) {
    return spans
        .map(span -> new BigDecimal(QuoteText.hundredths(end.applyAsDouble(span))))
        .reduce(BigDecimal.ZERO, BigDecimal::add);
  }

  /**
   * 11.12 h (as above) at 50, half of them for a second person at 40, two days of the machine at
   * 200.
   */
  @Test
  void money_stands_only_where_a_rate_is_known_and_never_below_the_smallest_charge() {
    Quote quote =
        Quoting.usual(4.5).withSecondPerson(0.5).of(ONE_PASS, new Counts(3, 3, 3), Span.NONE);

    assertThat(quote.price(Rates.NONE)).isEmpty();
    assertThat(quote.onSite().usual()).isEqualTo(11.12);
    assertThat(quote.basis().days().usual()).isEqualTo(2);
    Price price = quote.price(rates(OptionalDouble.empty())).orElseThrow();
    assertThat(price.lines().stream().map(line -> line.cost().usual()))
        .containsExactly(556.0, 222.4, 400.0);
    assertThat(price.charged()).isEqualTo(price.sum());
    Price least = quote.price(rates(OptionalDouble.of(1200))).orElseThrow();
    assertThat(least.charged().usual()).isEqualTo(1200);
    assertThat(least.charged().high()).isEqualTo(least.sum().high()).isGreaterThan(1200);
  }

  private static Rates rates(OptionalDouble smallest) {
    return new Rates(
        OptionalDouble.of(50),
        OptionalDouble.of(40),
        OptionalDouble.of(200),
        OptionalDouble.empty(),
        smallest);
  }

  /** Twelve spots to expect, thirty at most: 10 min each (5 to 20). */
  @Test
  void charred_spots_that_are_expected_are_put_right() {
    Quote quote = Quoting.usual(4.5).of(ONE_PASS, new Counts(1, 1, 1), new Span(0, 12, 30));

    assertThat(hours(quote, Task.REWORK)).isEqualTo(new Span(0, 2, 10));
    assertThat(QuoteText.how(Task.REWORK, quote))
        .isEqualTo("10 min (5 to 20) a charred spot, 12 charred spots (0 to 30) expected");
  }

  @Test
  void where_lead_may_be_the_work_is_contained_and_cleared() {
    Quote untested =
        Quoting.usual(4.5).with(Lead.NOT_TESTED).of(ONE_PASS, new Counts(1, 1, 1), Span.NONE);
    Quote free = Quoting.usual(4.5).with(Lead.FREE).of(ONE_PASS, new Counts(1, 1, 1), Span.NONE);

    assertThat(hours(untested, Task.CONTAINMENT)).isEqualTo(new Span(2, 4, 8));
    assertThat(hours(untested, Task.CLEARANCE)).isEqualTo(new Span(2, 3, 6));
    assertThat(QuoteText.warnings(untested)).first().asString().startsWith("Lead: not tested.");
    assertThat(free.parts()).noneMatch(p -> p.task().per() == Task.Per.JOB_WITH_LEAD);
    assertThat(QuoteText.warnings(free)).isEmpty();
  }

  /**
   * Few passes: as many as an even chance takes by the posterior's middle; many: as many as the
   * asked chance takes at 95 % of it. Both counted up here from the chances themselves.
   */
  @Test
  void the_passes_of_a_quote_are_the_windows_and_what_the_posterior_leaves_open() {
    Trials trials = readFromThePass(3, ReferenceStrata.trials("latex", "pine"));
    RigSetup bench =
        RigSetup.of(RigSetup.mostUsedRig(trials.patches()), trials.patches(), InventedShop.DAY);
    Recommendation found =
        WindowFinder.withDefaults()
            .recommend(trials, bench, new Requirements(0.05, 0.6, 0.9, false));
    Forecast start = found.chosen().orElseThrow().start();
    AreaRate onePass =
        bench.exposure(start.powerPercent(), start.speedMillimetresPerSecond()).areaRate();
    int fewest = Math.min(start.passes(), passes(found, start, 0.5, 0.5));
    int most = Math.max(start.passes(), passes(found, start, 0.9, 0.05));
    Quote quote = Quoting.usual(4.5).of(found);
    Span work = hours(quote, Task.BEAM);

    assertThat(fewest).isGreaterThan(1).isLessThan(start.passes());
    assertThat(most).isGreaterThan(start.passes());
    double hundredth = 0.01; // hours are rounded to hundredths, the ends outward
    assertThat(work.low()).isCloseTo(Quote.workHours(4.5, onePass, fewest, 0.7), within(hundredth));
    assertThat(work.usual())
        .isCloseTo(Quote.workHours(4.5, onePass, start.passes(), 0.6), within(hundredth));
    assertThat(work.high()).isCloseTo(Quote.workHours(4.5, onePass, most, 0.5), within(hundredth));
    assertThat(quote.basis().spots().usual())
        .isCloseTo(4.5 * found.charredSpots(start).mean(), within(1e-12));
  }

  /** Then the window has that many passes at least. */
  private static Trials readFromThePass(int first, Trials all) {
    return new Trials(
        all.stratum(),
        all.patches().stream()
            .filter(p -> p.lastReading().passes() >= first)
            .map(
                p ->
                    Pieces.withReadings(
                        p, p.readings().stream().filter(r -> r.passes() >= first).toList()))
            .toList(),
        false);
  }

  /** The first pass by which a quantile of the clearing chance has reached a chance. */
  private static int passes(
      Recommendation found, Forecast start, double chance, double probability) {
    Posterior posterior = found.clearingFit().orElseThrow().posterior();
    int n = 1;
    while (posterior.quantile(
            posterior.newBoardChance(start.doseJoulesPerCm2(), start.intensity(), n), probability)
        < chance) {
      n++;
    }
    return n;
  }

  @Test
  void what_cannot_be_is_refused_in_a_sentence() {
    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(() -> Quoting.usual(0))
        .withMessage("Area of the job must be above 0 m2, not 0 m2.");
    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(() -> Quoting.usual(1).withEdges(0.5))
        .withMessage("Factor for edges must be between 1 and 10 times, not 0.5 times.");
  }
}
