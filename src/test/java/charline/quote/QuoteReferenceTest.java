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
    Quote quote = Quoting.usual(4.5).of(ONE_PASS, new Quote.Counts(3, 3, 3));

    assertThat(quote.parts().stream().map(p -> QuoteText.task(p.task())))
        .containsExactly(
            "beam and handling", "cooling", "test patches", "set-up", "masking", "fire watch");
    assertThat(quote.parts().get(0).hours().usual()).isCloseTo(3.47222, within(5e-6));
    assertThat(QuoteText.how(Quote.Task.BEAM, quote))
        .isEqualTo("4.5 m2 at 6.48 m2/h per pass, 3 passes, hand efficiency 60 % (50 % to 70 %)");
    // 3.47222 + 2 x 5 min + 3 x 10 min + 60 min + 45 min + 60 min
    assertThat(quote.total().usual()).isCloseTo(3.47222 + 205 / 60.0, within(1e-5));
    assertThat(quote.total().low()).isLessThan(quote.total().usual());
    assertThat(quote.total().high()).isGreaterThan(quote.total().usual());
  }

  @Test
  void what_the_person_knows_takes_the_place_of_the_usual_range() {
    Quote quote =
        Quoting.usual(4.5)
            .withEfficiency(0.6)
            .with(Quote.Task.SET_UP, 30)
            .with(Quote.Task.MASKING, 12)
            .with(Quote.Task.COOLING, 4)
            .with(Quote.Task.FIRE_WATCH, 120)
            .of(ONE_PASS, new Quote.Counts(3, 3, 3));

    // 3.47222 h, 2 x 4 min, 30 min, 4.5 x 12 min and 120 min; only the test patches stay a range.
    assertThat(quote.parts().stream().filter(p -> p.task() != Quote.Task.TEST_PATCHES))
        .allMatch(p -> p.hours().low() == p.hours().high());
    assertThat(quote.total().usual())
        .isCloseTo(3.47222 + (8 + 30 + 30 + 54 + 120) / 60.0, within(1e-5));
    assertThat(QuoteText.warnings(quote)).isEmpty();
  }

  /** NFPA 51B (2019): a fire watch of one hour after hot work. */
  @Test
  void a_fire_watch_below_an_hour_is_quoted_only_with_a_plain_word() {
    assertThat(QuoteText.warnings(Quoting.usual(4.5).of(ONE_PASS, new Quote.Counts(3, 3, 3))))
        .isEmpty();
    assertThat(
            QuoteText.warnings(
                Quoting.usual(4.5)
                    .with(Quote.Task.FIRE_WATCH, 60)
                    .of(ONE_PASS, new Quote.Counts(3, 3, 3))))
        .isEmpty();
    assertThat(
            QuoteText.warnings(
                Quoting.usual(4.5)
                    .with(Quote.Task.FIRE_WATCH, 30)
                    .of(ONE_PASS, new Quote.Counts(3, 3, 3))))
        .containsExactly(
            "A fire watch of 30 min is less than the cautions ask for: NFPA 51B (2019) has one hour"
                + " after the last pass, longer over hidden cavities; insurers and permits may ask"
                + " for more. Keep the hour, and quote it.");
  }

  @Test
  void edges_stretch_the_work_alone() {
    Quote flat = Quoting.usual(4.5).of(ONE_PASS, new Quote.Counts(3, 3, 3));
    Quote moulded = Quoting.usual(4.5).withEdges(1.5).of(ONE_PASS, new Quote.Counts(3, 3, 3));

    assertThat(moulded.parts().get(0).hours().usual())
        .isCloseTo(1.5 * flat.parts().get(0).hours().usual(), within(1e-12));
    assertThat(moulded.parts().get(4)).isEqualTo(flat.parts().get(4));
  }

  @Test
  void a_job_of_several_days_is_watched_and_set_up_each_day() {
    Quote quote = Quoting.usual(40).of(ONE_PASS, new Quote.Counts(3, 3, 3));

    // 30.86 h of work and 10 min of rest at six hours a day; 26.46 h and 4 min at the low end,
    // 37.04
    // h and 20 min at the high one
    assertThat(quote.parts().get(5).hours()).isEqualTo(new Quote.Hours(5, 6, 28));
    assertThat(QuoteText.assumptions(quote)).contains(days("6 days (5 to 7)"));
  }

  /** 24 m2: once over at 70 % is 5.29 h, three times at 60 % 18.52 h, at 50 % 22.22 h. */
  @Test
  void the_days_in_words_are_those_that_either_end_of_the_hours_is_reckoned_with() {
    Quote quote = Quoting.usual(24).of(ONE_PASS, new Quote.Counts(1, 3, 3));

    assertThat(quote.parts().get(3).hours()).isEqualTo(new Quote.Hours(0.75, 4, 6));
    assertThat(quote.parts().get(5).hours()).isEqualTo(new Quote.Hours(1, 4, 16));
    assertThat(QuoteText.assumptions(quote)).contains(days("4 days (1 to 4)"));
    assertThat(QuoteText.assumptions(Quoting.usual(4.5).of(ONE_PASS, new Quote.Counts(3, 3, 3))))
        .contains(days("1 day"));
  }

  private static String days(String words) {
    return "At up to 6 h of beam, handling and cooling a day, the work takes %s; set-up and fire watch come on top each day, test patches and masking once."
        .formatted(words);
  }

  /** 5.93 h of work at the high end and twice 10 min of rest are more than a day of six hours. */
  @Test
  void rest_between_passes_takes_its_part_of_a_day() {
    assertThat(QuoteText.assumptions(Quoting.usual(6.4).of(ONE_PASS, new Quote.Counts(3, 3, 3))))
        .contains(days("1 day (1 to 2)"));
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
    Quote.Hours work = Quoting.usual(4.5).of(found).parts().get(0).hours();

    assertThat(fewest).isGreaterThan(1).isLessThan(start.passes());
    assertThat(most).isGreaterThan(start.passes());
    assertThat(work.low()).isCloseTo(Quote.workHours(4.5, onePass, fewest, 0.7), within(1e-9));
    assertThat(work.usual())
        .isCloseTo(Quote.workHours(4.5, onePass, start.passes(), 0.6), within(1e-9));
    assertThat(work.high()).isCloseTo(Quote.workHours(4.5, onePass, most, 0.5), within(1e-9));
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
