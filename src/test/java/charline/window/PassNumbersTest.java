package charline.window;

import static org.assertj.core.api.Assertions.assertThat;

import charline.model.Event;
import charline.model.Fitter;
import charline.model.ReferenceStrata;
import charline.model.Trials;
import charline.trial.Patch;
import charline.trial.Pieces;
import charline.trial.Reading;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** For which numbers of passes a window is looked for. */
class PassNumbersTest {
  private static final OffsetDateTime TODAY = OffsetDateTime.parse("2026-11-01T12:00:00Z");
  private static final Trials TRIALS = ReferenceStrata.trials("latex", "pine");

  private static List<Integer> searched(Integer... tried) {
    return PassNumbers.between(new TreeSet<>(List.of(tried)));
  }

  @Test
  void every_number_between_the_fewest_and_the_most_tried_is_as_good_as_one_tried() {
    assertThat(searched(1)).containsExactly(1);
    assertThat(searched(3, 7)).containsExactly(3, 4, 5, 6, 7);
    assertThat(searched(2, 40))
        .containsExactlyElementsOf(IntStream.rangeClosed(2, 40).boxed().toList());
  }

  @Test
  void beyond_forty_the_next_is_at_most_five_percent_more_and_one_that_was_tried_if_any_was() {
    Random random = new Random(3);
    for (int k = 0; k < 500; k++) {
      TreeSet<Integer> tried = new TreeSet<>();
      for (int i = 0; i <= random.nextInt(30); i++) {
        tried.add((int) Math.exp(Math.log(Integer.MAX_VALUE) * random.nextDouble()));
      }
      List<Integer> numbers = PassNumbers.between(tried);
      assertThat(numbers.get(0)).isEqualTo(tried.first());
      assertThat(numbers.get(numbers.size() - 1)).isEqualTo(tried.last());
      for (int i = 1; i < numbers.size(); i++) {
        int before = numbers.get(i - 1);
        int next = numbers.get(i);
        assertThat(next).isGreaterThan(before);
        if (next > before + 1) {
          assertThat(next / (double) before).isLessThanOrEqualTo(1.05);
          if (!tried.contains(next)) {
            assertThat(tried.subSet(before, false, next, true)).isEmpty();
          }
        }
      }
    }
  }

  @Test
  void a_mistyped_number_of_passes_costs_some_hundred_searches() {
    assertThat(searched(1, 2, 3, 4, 20_000)).hasSizeLessThan(200);
    assertThat(searched(1, 2, 3, 4, 999_999_999)).hasSizeLessThan(500);
    TreeSet<Integer> allTried = new TreeSet<>();
    IntStream.rangeClosed(1, 20_000).forEach(allTried::add);
    assertThat(PassNumbers.between(allTried)).hasSizeLessThan(200);
  }

  @ParameterizedTest
  @ValueSource(ints = {20_000, 999_999_999})
  void a_log_with_a_mistyped_number_of_passes_gets_its_answer(int slip) {
    Trials trials = mistyped(slip);
    RigSetup bench = bench(trials);

    Recommendation answer =
        WindowFinder.withDefaults().recommend(trials, bench, Requirements.USUAL);
    assertThat(answer.verdict()).isEqualTo(Verdict.WINDOW);
    assertThat(
            LiveForecast.fitted(Fitter.withDefaults(), trials)
                .recommend(bench, Requirements.USUAL)
                .chosen())
        .isEqualTo(answer.chosen());
  }

  /** Readings after twenty times as many passes, so that the windows lie beyond forty. */
  @Test
  void the_quickest_window_is_as_quick_as_after_a_search_of_every_number() {
    List<Patch> patches =
        TRIALS.patches().stream()
            .map(
                p ->
                    Pieces.withReadings(
                        p,
                        p.readings().stream().map(r -> Pieces.after(20 * r.passes(), r)).toList()))
            .toList();
    Trials trials = new Trials(TRIALS.stratum(), patches, false);
    TriedRegion reach = new TriedRegion(patches);
    List<Integer> every =
        IntStream.rangeClosed(reach.fewestPasses(), reach.mostPasses()).boxed().toList();
    List<Integer> some = PassNumbers.between(reach.passesTried());
    RiskBounds promises =
        new RiskBounds(
            Requirements.USUAL,
            Fitter.withDefaults().fit(trials, Event.CHAR),
            Fitter.withDefaults().fit(trials, Event.CLEARING),
            Strokes.SINGLE);

    assertThat(some.size()).isLessThan(every.size() / 2);
    double quickest = quickest(every, trials, reach, promises);
    assertThat(quickest).isPositive();
    assertThat(quickest(some, trials, reach, promises)).isGreaterThanOrEqualTo(0.95 * quickest);
  }

  /** Highest net area rate of the windows for these numbers of passes, cm²/min; 0 without any. */
  private static double quickest(
      List<Integer> numbers, Trials trials, TriedRegion reach, RiskBounds promises) {
    RigSetup bench = bench(trials);
    double best = 0;
    for (int passes : numbers) {
      BoxSearch search =
          new BoxSearch(
              bench,
              reach,
              TriedKnobs.of(trials.patches()).speeds(SpeedKnob.Kind.HAND),
              new SupportingPatches(trials),
              promises.hottest(reach, passes),
              promises.coldest(reach, passes),
              passes);
      Optional<BoxSearch.Point> start = search.largest().map(search::start);
      if (start.isPresent()) {
        double speed = Math.exp(start.get().lnSpeed());
        best =
            Math.max(
                best,
                promises
                    .forecast(bench, start.get().power(), speed, passes)
                    .netAreaRateSquareCentimetresPerMinute());
      }
    }
    return best;
  }

  private static RigSetup bench(Trials trials) {
    return RigSetup.of(RigSetup.mostUsedRig(trials.patches()), trials.patches(), TODAY);
  }

  /** Latex on pine with its first patch's last reading mistyped. */
  private static Trials mistyped(int passes) {
    List<Patch> patches = new ArrayList<>(TRIALS.patches());
    List<Reading> readings = new ArrayList<>(patches.get(0).readings());
    readings.set(readings.size() - 1, Pieces.after(passes, readings.get(readings.size() - 1)));
    patches.set(0, Pieces.withReadings(patches.get(0), readings));
    return new Trials(TRIALS.stratum(), patches, false);
  }
}
