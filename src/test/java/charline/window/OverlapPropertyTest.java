package charline.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import charline.model.Event;
import charline.model.Fitter;
import charline.model.ModelFit;
import charline.model.ReferenceStrata;
import charline.model.Trials;
import charline.refusal.Refusal;
import charline.trial.Pieces;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Work in strokes side by side, and over a whole job. */
class OverlapPropertyTest {
  private static Trials trials;
  private static RigSetup single;
  private static ModelFit charring;
  private static ModelFit clearing;

  @BeforeAll
  static void fit() {
    trials = ReferenceStrata.trials("latex", "pine");
    single =
        RigSetup.of(
            RigSetup.mostUsedRig(trials.patches()),
            trials.patches(),
            OffsetDateTime.parse("2026-11-01T10:00:00+01:00"));
    charring = Fitter.withDefaults().fit(trials, Event.CHAR);
    clearing = Fitter.withDefaults().fit(trials, Event.CLEARING);
  }

  private static Recommendation found(double overlap, Requirements asked) {
    return new WindowFinder(Fitter.withDefaults())
        .recommend(trials, single.withStrokes(new Strokes(overlap)), asked, charring, clearing);
  }

  private static List<Box> boxes(Recommendation found) {
    return Stream.concat(found.chosen().stream(), found.alternatives().stream()).toList();
  }

  /** Strokes 60 mm wide, 6 mm over each other: 6 of every 54 mm are seam. */
  @Test
  void a_tenth_of_the_width_is_a_ninth_of_the_area() {
    assertThat(Strokes.USUAL.seamShare()).isCloseTo(6.0 / 54, within(1e-15));
    assertThat(new Strokes(0.5).seamShare()).isEqualTo(1);
    assertThat(Strokes.SINGLE.seamShare()).isZero();
    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(() -> new Strokes(0.6))
        .withMessage("Overlap of strokes must be between 0 and 50 %, not 60 %.");
  }

  @Test
  void every_corner_keeps_the_char_promise_with_its_seams() {
    Recommendation found = found(0.1, Requirements.USUAL);
    assertThat(boxes(found)).isNotEmpty();
    for (Box box : boxes(found)) {
      Forecast hot = box.hotCorner();
      double alone =
          PredictedChance.of(charring, hot.doseJoulesPerCm2(), hot.intensity(), box.passes())
              .upper(0.9);
      double twice =
          PredictedChance.of(charring, hot.doseJoulesPerCm2(), hot.intensity(), 2 * box.passes())
              .upper(0.9);
      assertThat(hot.charRiskUpper()).isGreaterThan(alone).isLessThan(twice);
      assertThat(hot.charRiskUpper()).isLessThanOrEqualTo(0.05);
    }
  }

  /** The window of single strokes was too hot where strokes overlap. */
  @Test
  void the_hot_corner_of_single_strokes_breaks_the_promise_at_its_seams() {
    Forecast hot = found(0, Requirements.USUAL).chosen().orElseThrow().hotCorner();

    assertThat(
            PredictedChance.of(
                    charring, hot.doseJoulesPerCm2(), hot.intensity(), hot.passes(), Strokes.USUAL)
                .upper(0.9))
        .isGreaterThan(0.05);
  }

  @Test
  void more_overlap_never_allows_a_hotter_corner_and_covers_less() {
    List<Box> before = boxes(found(0, Requirements.USUAL));
    for (double overlap : new double[] {0.05, 0.1, 0.2, 0.3}) {
      for (Box box : boxes(found(overlap, Requirements.USUAL))) {
        Box wider = before.stream().filter(b -> b.passes() == box.passes()).findAny().orElseThrow();
        assertThat(box.hotCorner().doseJoulesPerCm2())
            .isLessThanOrEqualTo(wider.hotCorner().doseJoulesPerCm2() * 1.02);
        Forecast start = box.start();
        assertThat(start.netAreaRateSquareCentimetresPerMinute())
            .isCloseTo(
                (1 - overlap)
                    * single
                        .exposure(start.powerPercent(), start.speedMillimetresPerSecond())
                        .areaRate()
                        .netOf(start.passes())
                        .squareCentimetresPerMinute(),
                within(1e-9));
      }
    }
  }

  /** 5 % of areas of 25 cm2, of which a square metre has 400, are 20 spots. */
  @Test
  void spots_per_square_metre_are_risk_times_areas() {
    assertThat(CharredSpots.of(25, 0.01, 0.05)).isEqualTo(new CharredSpots(4, 20));
  }

  /**
   * 400 areas kept to 10 % need 1 - 0.9^(1/400) = 0.000263 each, at which all of them together char
   * with 1 - (1 - 0.000263)^400 = 0.09987.
   */
  @Test
  void a_limit_for_the_job_is_carried_over_to_one_area() {
    Requirements each = new JobLimit(1, OptionalDouble.of(0.1)).with(Requirements.USUAL, 25);

    assertThat(each.charRisk()).isEqualTo(0.000263);
    assertThat(JobRisk.of(1, 25, 0, each.charRisk()).upper()).isCloseTo(0.09987, within(5e-6));
    assertThat(new JobLimit(1, OptionalDouble.empty()).with(Requirements.USUAL, 25))
        .isEqualTo(Requirements.USUAL);
  }

  @Test
  void an_answer_on_the_tail_says_so() {
    assertThat(found(0.1, Requirements.USUAL).provisos()).isEmpty();
    assertThat(found(0.1, Requirements.USUAL.withCharRisk(0.000263)).provisos())
        .containsExactly(new Proviso.HangsOnTail(0.000263, trials.patches().size()));
  }

  /** Twice the passes of a window may be more than any patch had. */
  @Test
  void seams_beyond_the_trials_are_named() {
    Recommendation found = found(0.1, Requirements.USUAL);
    int passes = found.chosen().orElseThrow().passes();

    assertThat(readUpTo(2 * passes, found).provisos()).isEmpty();
    assertThat(readUpTo(2 * passes - 1, found).provisos())
        .containsExactly(new Proviso.SeamBeyondTrials(2 * passes, 2 * passes - 1));
  }

  private static Recommendation readUpTo(int passes, Recommendation found) {
    return new Recommendation(
        found.stratum(),
        found.asked(),
        found.evidence(),
        found.bench(),
        found.verdict(),
        found.reasons(),
        found.nextSteps(),
        found.standing(),
        found.tried(),
        found.chanceAnyWindow(),
        found.chosen(),
        found.alternatives(),
        found.map(),
        found.medianPatchSquareCentimetres(),
        found.charFit(),
        found.clearingFit(),
        Optional.empty(),
        found.patches().stream()
            .map(
                p ->
                    Pieces.withReadings(
                        p, p.readings().stream().filter(r -> r.passes() <= passes).toList()))
            .toList(),
        OptionalDouble.empty());
  }
}
