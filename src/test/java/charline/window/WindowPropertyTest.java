package charline.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.exposure.Exposure;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.ModelFit;
import charline.model.ReferenceStrata;
import charline.model.Trials;
import charline.trial.Patch;
import charline.trial.Pieces;
import charline.trial.Reading;
import charline.trial.RigBuilder;
import charline.wording.NextStepText;
import charline.wording.ReasonText;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a recommendation must keep, on the six strata of reference/posterior-passes-to-event. */
class WindowPropertyTest {
  private static final OffsetDateTime TODAY = OffsetDateTime.parse("2026-11-01T12:00:00Z");

  /** A promise at a corner may miss by what the straight lines of the frontier can be off. */
  private static final double LINE = 5e-4;

  static Stream<String> strata() {
    return ReferenceStrata.expected().keySet().stream();
  }

  private static Trials trials(String stratum) {
    String[] words = stratum.split("\\|");
    return ReferenceStrata.trials(words[0], words[1]);
  }

  private static RigSetup bench(Trials trials) {
    return RigSetup.of(RigSetup.mostUsedRig(trials.patches()), trials.patches(), TODAY);
  }

  private static Recommendation recommend(Trials trials, Requirements asked) {
    return WindowFinder.withDefaults().recommend(trials, bench(trials), asked);
  }

  private static List<Box> boxes(Recommendation answer) {
    return Stream.concat(answer.chosen().stream(), answer.alternatives().stream()).toList();
  }

  @ParameterizedTest
  @MethodSource("strata")
  void every_point_of_every_box_keeps_both_promises(String stratum) {
    Trials trials = trials(stratum);
    Recommendation answer = recommend(trials, Requirements.USUAL);
    RiskBounds promises =
        new RiskBounds(
            Requirements.USUAL,
            Fitter.withDefaults().fit(trials, Event.CHAR),
            Fitter.withDefaults().fit(trials, Event.CLEARING),
            Strokes.SINGLE);
    Random random = new Random(4);
    for (Box box : boxes(answer)) {
      assertThat(box.hotCorner().charRiskUpper()).isLessThanOrEqualTo(0.05 + LINE);
      assertThat(box.coldCorner().clearChanceLower()).isGreaterThanOrEqualTo(0.90 - LINE);
      for (int i = 0; i < 5; i++) {
        double power = between(box.powerPercent(), random.nextDouble());
        double speed = between(box.speedMillimetresPerSecond(), random.nextDouble());
        Forecast forecast = promises.forecast(answer.bench(), power, speed, box.passes());
        assertThat(forecast.charRiskUpper())
            .isLessThanOrEqualTo(box.hotCorner().charRiskUpper() + 1e-12);
        assertThat(forecast.clearChanceLower())
            .isGreaterThanOrEqualTo(box.coldCorner().clearChanceLower() - 1e-12);
      }
    }
  }

  private static double between(Range range, double share) {
    return range.low() + share * (range.high() - range.low());
  }

  @ParameterizedTest
  @MethodSource("strata")
  void no_box_leaves_what_was_tried(String stratum) {
    Trials trials = trials(stratum);
    Recommendation answer = recommend(trials, Requirements.USUAL);
    double[] doses =
        trials.patches().stream().mapToDouble(p -> p.exposure().doseJoulesPerCm2()).toArray();
    double[] fluences =
        trials.patches().stream().mapToDouble(p -> p.exposure().intensity()).toArray();
    int passes =
        trials.patches().stream().mapToInt(p -> p.lastReading().passes()).max().orElseThrow();
    TriedRegion reach = new TriedRegion(trials.patches());
    for (Box box : boxes(answer)) {
      for (Forecast corner : List.of(box.hotCorner(), box.coldCorner(), box.start())) {
        assertThat(corner.doseJoulesPerCm2()).isBetween(min(doses) - 1e-9, max(doses) + 1e-9);
        assertThat(corner.intensity()).isBetween(min(fluences) - 1e-9, max(fluences) + 1e-9);
      }
      assertThat(box.passes()).isLessThanOrEqualTo(passes);
      for (double power : ends(box.powerPercent())) {
        for (double speed : ends(box.speedMillimetresPerSecond())) {
          Exposure corner = answer.bench().exposure(power, speed);
          double lnDose = Math.log(corner.doseJoulesPerCm2());
          assertThat(reach.holds(lnDose, Math.log(corner.intensity()), box.passes()))
              .as("%s %%, %s mm/s, %s passes", power, speed, box.passes())
              .isTrue();
        }
      }
      assertThat(box.powerPercent().contains(box.start().powerPercent())).isTrue();
      assertThat(box.speedMillimetresPerSecond().contains(box.start().speedMillimetresPerSecond()))
          .isTrue();
    }
  }

  private static double[] ends(Range range) {
    return new double[] {range.low(), range.high()};
  }

  private static double min(double[] values) {
    return DoubleStream.of(values).min().orElseThrow();
  }

  private static double max(double[] values) {
    return DoubleStream.of(values).max().orElseThrow();
  }

  /** The rig's largest pulse energy is set to what half of the window's range needs. */
  @ParameterizedTest
  @MethodSource("strata")
  void no_box_asks_for_more_than_the_largest_pulse(String stratum) {
    Trials trials = trials(stratum);
    RigSetup bench = bench(trials);
    for (Box box : boxes(recommend(trials, Requirements.USUAL))) {
      double middle = between(box.powerPercent(), 0.5);
      double energy =
          bench.watts(middle) / bench.pulses().map(p -> p.repetitionKilohertz()).orElse(Double.NaN);
      if (Double.isNaN(energy)) {
        return;
      }
      RigSetup capped =
          bench.withRig(RigBuilder.like(bench.rig()).largestPulseMillijoules(energy).build());
      for (Box below :
          boxes(WindowFinder.withDefaults().recommend(trials, capped, Requirements.USUAL))) {
        assertThat(below.powerPercent().high()).isLessThanOrEqualTo(middle + 1e-9);
      }
    }
  }

  @ParameterizedTest
  @MethodSource("strata")
  void asking_for_more_never_widens_the_window(String stratum) {
    Trials trials = trials(stratum);
    Recommendation usual = recommend(trials, Requirements.USUAL);
    Recommendation strict = recommend(trials, new Requirements(0.02, 0.95, 0.95, false));
    assertThat(strict.chanceAnyWindow()).isLessThanOrEqualTo(usual.chanceAnyWindow() + 1e-12);
    for (Box box : boxes(strict)) {
      assertThat(boxes(usual)).anyMatch(b -> b.passes() == box.passes() && size(b) >= size(box));
    }
  }

  private static double size(Box box) {
    return (Math.log(box.powerPercent().high() / box.powerPercent().low()) + 0.01)
        * (Math.log(box.speedMillimetresPerSecond().high() / box.speedMillimetresPerSecond().low())
            + 0.01);
  }

  @Test
  void the_same_trials_give_the_same_digits_in_any_order() {
    Trials trials = trials("latex|pine");
    List<Patch> turned = new ArrayList<>(trials.patches());
    Collections.shuffle(turned, new Random(1));
    Recommendation one = recommend(trials, Requirements.USUAL);
    Recommendation again = recommend(trials, Requirements.USUAL);
    Recommendation other =
        recommend(new Trials(trials.stratum(), turned, false), Requirements.USUAL);
    assertThat(again.chosen()).isEqualTo(one.chosen());
    assertThat(other.verdict()).isEqualTo(one.verdict());
    assertThat(other.chosen().orElseThrow().start().charRiskMean())
        .isCloseTo(one.chosen().orElseThrow().start().charRiskMean(), within(0.002));
  }

  /** A window must not be found where it is known that the wood burns first. */
  @Test
  void burning_before_clearing_is_answered_with_none() {
    Trials trials = trials("varnish|oak"); // made with the burn threshold below the clearing one
    Recommendation answer = recommend(trials, new Requirements(0.02, 0.95, 0.9, false));
    assertThat(answer.verdict()).isEqualTo(Verdict.NONE);
    assertThat(answer.chosen()).isEmpty();
    assertThat(ReasonText.of(answer))
        .startsWith("Where the finish comes off, the wood chars: the chance that any setting");
    assertThat(NextStepText.of(answer.nextSteps()))
        .startsWith("Use another method for this finish on this wood.");
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 5})
  void few_patches_are_answered_with_not_yet_and_what_to_burn(int count) {
    Trials trials = trials("latex|pine");
    Recommendation answer =
        recommend(
            new Trials(trials.stratum(), trials.patches().subList(0, count), false),
            Requirements.USUAL);
    assertThat(answer.verdict()).isEqualTo(Verdict.NOT_YET);
    assertThat(ReasonText.of(answer))
        .contains(
            "not enough: a promise about a board not seen yet takes at least 6 patches on 3"
                + " boards.");
    assertThat(NextStepText.of(answer.nextSteps())).startsWith("Burn the patches listed");
  }

  @Test
  void trials_that_deny_the_model_are_called_unreliable() {
    Trials trials = trials("latex|oak");
    List<Patch> turned = Upended.outcomes(trials.patches());
    Recommendation answer =
        recommend(new Trials(trials.stratum(), turned, false), Requirements.USUAL);
    assertThat(answer.verdict()).isEqualTo(Verdict.UNRELIABLE);
    assertThat(ReasonText.of(answer))
        .startsWith("Cooler patches charred sooner than hotter ones in ");
    assertThat(answer.chosen()).isEmpty();
  }

  /** The hottest charred patch typed with a tenth of its power. */
  @Test
  void a_mistyped_power_is_named_where_the_verdict_is_unreliable() {
    Trials trials = trials("latex|pine");
    List<Patch> patches = new ArrayList<>(trials.patches());
    Patch slip =
        patches.stream()
            .filter(p -> p.lastReading().outcome().charred())
            .max(Comparator.comparingDouble(p -> p.exposure().doseJoulesPerCm2()))
            .orElseThrow();
    patches.set(patches.indexOf(slip), Upended.withTenthOfThePower(slip));
    Recommendation answer =
        recommend(new Trials(trials.stratum(), patches, false), Requirements.USUAL);
    assertThat(answer.verdict()).isEqualTo(Verdict.UNRELIABLE);
    assertThat(ReasonText.of(answer))
        .containsPattern(slip.code() + " (charred|cleared) within 1 pass of ");
    assertThat(NextStepText.of(answer.nextSteps()))
        .startsWith("Check these patches for a mistyped setting or a wrong outcome");
    assertThat(answer.chosen()).isEmpty();
  }

  /** Patches first looked at after four passes say nothing of one pass. */
  @Test
  void the_chance_of_any_window_is_that_at_passes_that_were_tried() {
    Trials all = trials("varnish|oak"); // where it is not plain whether there is a window
    List<Patch> late =
        all.patches().stream()
            .filter(p -> p.lastReading().passes() >= 4)
            .map(p -> Pieces.withReadings(p, from(p, 4)))
            .toList();
    Trials trials = new Trials(all.stratum(), late, false);
    ModelFit charFit = ReferenceStrata.fitter().fit(trials, Event.CHAR);
    ModelFit clearing = ReferenceStrata.fitter().fit(trials, Event.CLEARING);
    double chance =
        new RiskBounds(Requirements.USUAL, charFit, clearing, Strokes.SINGLE)
            .chanceAnyWindow(new TriedRegion(trials.patches()));

    // Both are shares: of 20,000 pairs by lot there, of all pairs of 1000 draws each here.
    assertThat(chance).isCloseTo(chanceBetween(4, 6, charFit, clearing, late), within(0.05));
    assertThat(chanceBetween(1, 6, charFit, clearing, late)).isGreaterThan(chance + 0.04);
  }

  private static List<Reading> from(Patch patch, int passes) {
    return patch.readings().stream().filter(r -> r.passes() >= passes).toList();
  }

  /** Of all pairs of draws, those with room between their doses at some number of passes. */
  private static double chanceBetween(
      int fewest, int most, ModelFit charFit, ModelFit clearing, List<Patch> patches) {
    double[] lnIntensities =
        patches.stream().mapToDouble(p -> Math.log(p.exposure().intensity())).toArray();
    int draws = 1000;
    boolean[][] any = new boolean[draws][draws];
    for (double lnIntensity : new double[] {min(lnIntensities), max(lnIntensities)}) {
      for (int passes = fewest; passes <= most; passes++) {
        double[] hottest = charFit.posterior().doseLimit(0.05).sample(draws, lnIntensity, passes);
        double[] coldest = clearing.posterior().doseLimit(0.90).sample(draws, lnIntensity, passes);
        for (int i = 0; i < draws; i++) {
          for (int j = 0; j < draws; j++) {
            any[i][j] |= coldest[j] <= hottest[i];
          }
        }
      }
    }
    long count = 0;
    for (boolean[] row : any) {
      for (boolean a : row) {
        count += a ? 1 : 0;
      }
    }
    return (double) count / draws / draws;
  }

  @Test
  void the_map_tells_the_same_story_as_the_box() {
    Recommendation answer = recommend(trials("latex|pine"), Requirements.USUAL);
    Box box = answer.chosen().orElseThrow();
    WindowMap map = answer.map().orElseThrow();
    assertThat(map.passes()).isEqualTo(box.passes());
    long inside =
        map.rows().stream()
            .flatMap(List::stream)
            .filter(
                c ->
                    box.powerPercent().contains(c.powerPercent())
                        && box.speedMillimetresPerSecond().contains(c.speedMillimetresPerSecond()))
            .peek(c -> assertThat(c.tried() && c.keepsChar() && c.keepsClearing()).isTrue())
            .count();
    assertThat(inside).isPositive();
  }
}
