package charline.window;

import static charline.trial.Pieces.NOON;
import static org.assertj.core.api.Assertions.assertThat;

import charline.model.Contradictions;
import charline.model.Event;
import charline.model.Evidence;
import charline.model.ReferenceStrata;
import charline.model.Trials;
import charline.model.check.CountCheck;
import charline.model.check.FitChecks;
import charline.model.check.FitFinding;
import charline.model.check.Severity;
import charline.trial.Board;
import charline.trial.Patch;
import charline.trial.Pieces;
import charline.trial.Stratum;
import charline.wording.NextStepText;
import charline.wording.ReasonText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** From the numbers to the verdict: each rule of the verdict at its limit. */
class FindingsTest {
  private static final Trials TRIALS = ReferenceStrata.trials("latex", "pine");
  private static final RigSetup BENCH =
      RigSetup.of(RigSetup.mostUsedRig(TRIALS.patches()), TRIALS.patches(), NOON);
  private static final Box BOX = box(10, 12);
  private static final CountCheck COUNT = new CountCheck("9 J/cm2", 3, 3, 3, 1.2, 0, 2, 0.001);

  private static Box box(double slowest, double fastest) {
    Forecast any = new Forecast(40, 80, 11, 2, 10, 1, 0.01, 0.04, 0.98, 0.92, 180);
    return new Box(2, new Range(40, 50), new Range(slowest, fastest), any, any, any);
  }

  private static FitChecks checks(Event event, Severity worst) {
    return new FitChecks(
        event,
        List.of(new FitFinding.CountOff(worst, FitFinding.Topic.DOSE, event, COUNT)),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        new Contradictions(9, 0, 1),
        -1);
  }

  private static Verdict verdict(
      Evidence evidence,
      Severity charring,
      Severity clearing,
      double boardSpread,
      Optional<Box> box,
      double chance) {
    return new Findings(
            evidence,
            Requirements.USUAL,
            BENCH,
            new TriedRegion(TRIALS.patches()),
            new SupportingPatches(TRIALS),
            checks(Event.CHAR, charring),
            checks(Event.CLEARING, clearing),
            boardSpread,
            box,
            Optional.empty(),
            chance)
        .verdict();
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          6,  3, 0.10, WINDOW
          5,  3, 0.10, NOT_YET
          6,  2, 0.10, NOT_YET
          20, 3, 0.20, WINDOW
          20, 4, 0.21, NOT_YET
          20, 5, 0.21, WINDOW
          20, 5, 0.30, WINDOW
          20, 9, 0.31, NOT_YET
          """)
  void a_box_is_a_window_on_enough_patches_and_boards_alike_enough(
      int patches, int boards, double boardSpread, Verdict expected) {
    assertThat(
            verdict(
                new Evidence(patches, boards, patches, 2, 3),
                Severity.LOOK,
                Severity.LOOK,
                boardSpread,
                Optional.of(BOX),
                0.9))
        .isEqualTo(expected);
  }

  @ParameterizedTest
  @CsvSource({"6, 3, 0.19, NONE", "6, 3, 0.2, NOT_YET", "5, 3, 0.01, NOT_YET"})
  void without_a_box_there_is_none_only_where_hope_is_small_on_enough_patches(
      int patches, int boards, double chance, Verdict expected) {
    assertThat(
            verdict(
                new Evidence(patches, boards, patches, 2, 3),
                Severity.FINE,
                Severity.FINE,
                0.1,
                Optional.empty(),
                chance))
        .isEqualTo(expected);
  }

  /** Six patches that all charred at 7 to 11 J/cm2 say nothing of what 3 J/cm2 would do. */
  @Test
  void trials_too_hot_to_leave_any_finish_ask_for_cooler_ones() {
    RigSetup bench = RigSetup.usual(Pieces.rig(1, "Heron", 200), NOON);
    List<Patch> patches = new ArrayList<>();
    for (int i = 1; i <= 6; i++) {
      double dose = i % 2 == 0 ? 7 : 11;
      patches.add(burned(i, Pieces.board(1 + i % 3, "pine"), bench, dose, "char"));
    }
    Recommendation answer =
        WindowFinder.withDefaults()
            .recommend(
                new Trials(Stratum.of(patches.get(0)), patches, false), bench, Requirements.USUAL);
    assertThat(answer.chanceAnyWindow()).isLessThan(WindowFinder.HOPELESS);
    assertThat(answer.verdict()).isEqualTo(Verdict.NOT_YET);
    assertThat(ReasonText.of(answer)).contains("Until 3 patches have kept finish");
    assertThat(NextStepText.of(answer)).startsWith("Go back down the ladder");
  }

  @ParameterizedTest
  @CsvSource({"FAILS, FINE", "FINE, FAILS"})
  void either_model_that_fails_makes_the_answer_unreliable(Severity charring, Severity clearing) {
    Evidence plenty = new Evidence(20, 5, 40, 6, 9);
    assertThat(verdict(plenty, charring, clearing, 0.1, Optional.of(BOX), 0.9))
        .isEqualTo(Verdict.UNRELIABLE);
    assertThat(verdict(plenty, charring, clearing, 0.1, Optional.empty(), 0.01))
        .isEqualTo(Verdict.UNRELIABLE);
  }

  /** At 50 % 10 J/cm2 left the wood as it was and 20 J/cm2 charred it. */
  private static String nextStep(double speed) {
    RigSetup bench = RigSetup.usual(Pieces.rig(1, "Heron", 200), NOON);
    List<Patch> patches =
        List.of(burned(1, bench, 10, "residue"), burned(2, bench, 20, "char+residue"));
    Trials trials = new Trials(Stratum.of(patches.get(0)), patches, false);
    Forecast hope = new Forecast(50, 100, speed, 2, 10, 1, 0.1, 0.3, 0.7, 0.4, 180);
    return NextStepText.of(
        new Findings(
                trials.evidence(),
                Requirements.USUAL,
                bench,
                new TriedRegion(patches),
                new SupportingPatches(trials),
                checks(Event.CHAR, Severity.FINE),
                checks(Event.CLEARING, Severity.FINE),
                0.1,
                Optional.empty(),
                Optional.of(hope),
                0.9)
            .nextSteps());
  }

  private static Patch burned(int number, RigSetup bench, double dose, String outcome) {
    return burned(number, Pieces.board(1, "pine"), bench, dose, outcome);
  }

  private static Patch burned(
      int number, Board board, RigSetup bench, double dose, String outcome) {
    return Pieces.patch(
        number,
        bench.rig(),
        board,
        Pieces.finish(1, "latex"),
        bench.settings(50, bench.speedForDose(50, dose)),
        Pieces.reading(1, outcome));
  }

  /** 14 mm/s are 11.9 J/cm2, a rung more would be 14.9: over a quarter above what was unharmed. */
  @Test
  void the_next_step_climbs_no_rung_above_what_was_burned_without_char() {
    assertThat(nextStep(14))
        .isEqualTo(
            "Burn at 50 %, hand speed 18, 14 mm/s in that order, on a board not used yet, judging"
                + " after every pass up to 3 passes; then ask again.");
    assertThat(nextStep(20)).startsWith("Burn at 50 %, hand speed 25, 20, 16 mm/s in that order");
    assertThat(nextStep(8)).startsWith("Go back down the ladder");
  }

  /** 15 % from slowest to fastest is what a steady hand keeps to; a scanner keeps to anything. */
  @Test
  void only_a_hand_needs_room_in_its_speed() {
    SpeedKnob hand = new SpeedKnob(SpeedKnob.Kind.HAND, 60);
    assertThat(box(10, 11.4).narrowFor(hand)).isTrue();
    assertThat(box(10, 11.6).narrowFor(hand)).isFalse();
    assertThat(box(10, 10.1).narrowFor(new SpeedKnob(SpeedKnob.Kind.SCAN, 0.1))).isFalse();
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          20.2,  23.4,  21;22;23
          20.2,  21.3,  20.5;21
          20.2,  20.44, 20.2;20.3;20.4
          20.01, 20.04, 20.04
          40,    40,    40
          98.5,  130,   99;100
          99.95, 130,   100
          101,   130,   ''
          """)
  void powers_are_those_of_the_dial_that_were_tried(double low, double high, String powers) {
    double[] expected =
        powers.isEmpty()
            ? new double[0]
            : List.of(powers.split(";")).stream().mapToDouble(Double::parseDouble).toArray();
    assertThat(PowerDial.powers(low, high))
        .usingComparatorWithPrecision(1e-9)
        .containsExactly(expected);
  }
}
