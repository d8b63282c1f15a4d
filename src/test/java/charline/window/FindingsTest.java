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
        List.of(),
        new Contradictions(9, 0, 1),
        -1);
  }

  private static final Forecast MAY_CHAR = forecast(0.3, 0.4);
  private static final Forecast MAY_NOT_CLEAR = forecast(0.04, 0.61);

  private static Forecast forecast(double charUpper, double clearLower) {
    return new Forecast(50, 100, 20, 2, 10, 1, 0.01, charUpper, 0.7, clearLower, 180);
  }

  private static Findings findings(
      Evidence evidence,
      Severity charring,
      Severity clearing,
      Optional<Box> box,
      boolean settled,
      Shortfall shortfall,
      double chance) {
    return findings(evidence, charring, clearing, box, settled, shortfall, chance, 0.15);
  }

  private static Findings findings(
      Evidence evidence,
      Severity charring,
      Severity clearing,
      Optional<Box> box,
      boolean settled,
      Shortfall shortfall,
      double chance,
      double boardSpread) {
    return new Findings(
        evidence,
        Requirements.USUAL,
        BENCH,
        TriedKnobs.of(TRIALS.patches()),
        new SupportingPatches(TRIALS),
        checks(Event.CHAR, charring),
        checks(Event.CLEARING, clearing),
        boardSpread,
        box,
        settled,
        Optional.empty(),
        shortfall,
        chance);
  }

  private static Verdict verdict(
      Evidence evidence, Severity charring, Severity clearing, Optional<Box> box, double chance) {
    return findings(evidence, charring, clearing, box, true, Shortfall.NONE, chance).verdict();
  }

  @ParameterizedTest
  @CsvSource({"6, 3, WINDOW", "5, 3, NOT_YET", "6, 2, NOT_YET", "20, 3, WINDOW"})
  void a_box_is_a_window_on_enough_patches_and_boards(int patches, int boards, Verdict expected) {
    assertThat(
            verdict(
                new Evidence(patches, boards, patches, 2, 3),
                Severity.LOOK,
                Severity.LOOK,
                Optional.of(BOX),
                0.9))
        .isEqualTo(expected);
  }

  @Test
  void a_window_that_would_not_survive_a_move_of_its_limits_is_provisional() {
    Evidence plenty = new Evidence(20, 5, 40, 6, 9);
    Findings open =
        findings(
            plenty, Severity.FINE, Severity.FINE, Optional.of(BOX), false, Shortfall.NONE, 0.9);
    assertThat(open.standing()).contains(Standing.PROVISIONAL);
    assertThat(ReasonText.of(open.reasons()))
        .contains(
            "The window is provisional: more patches may still move its limits by 16 %, and then it"
                + " would be gone.");
    Findings settled =
        findings(plenty, Severity.FINE, Severity.FINE, Optional.of(BOX), true, Shortfall.NONE, 0.9);
    assertThat(settled.standing()).contains(Standing.TO_CONFIRM);
    assertThat(
            findings(
                    plenty,
                    Severity.FAILS,
                    Severity.FINE,
                    Optional.of(BOX),
                    false,
                    Shortfall.NONE,
                    0.9)
                .standing())
        .isEmpty();
  }

  @Test
  void a_window_on_boards_that_differ_says_that_the_piece_itself_tells_more() {
    assertThat(
            ReasonText.of(
                findings(
                        new Evidence(20, 3, 40, 6, 9),
                        Severity.FINE,
                        Severity.FINE,
                        Optional.of(BOX),
                        true,
                        Shortfall.NONE,
                        0.9,
                        0.25)
                    .reasons()))
        .endsWith(
            "These boards differ: one in three is off the average by more than a factor of 1.28."
                + " Patches on the piece itself promise more than other boards can.");
  }

  @Test
  void a_window_that_too_few_patches_came_through_says_so() {
    assertThat(why(3, new Shortfall(true, Optional.of(MAY_NOT_CLEAR), false, false, true)))
        .contains("The models alone promise a window: fewer than 4 of the 18 patches");
  }

  private static String why(int boards, Shortfall shortfall) {
    return ReasonText.of(
        findings(
                new Evidence(20, boards, 40, 6, 9),
                Severity.FINE,
                Severity.FINE,
                Optional.empty(),
                false,
                shortfall,
                0.9)
            .reasons());
  }

  /** A setting that may char is no best setting, and none is named where every promise breaks. */
  @Test
  void the_best_setting_keeps_the_char_limit_or_there_is_none() {
    assertThat(why(3, new Shortfall(true, Optional.of(MAY_NOT_CLEAR), false, false, false)))
        .isEqualTo(
            "The best setting so far that keeps the char limit, 50 %, hand speed 20 mm/s, 2 passes,"
                + " may clear as few as 61 % of patches (asked: at least 90 %).");
    assertThat(why(3, new Shortfall(true, Optional.empty(), true, false, false)))
        .isEqualTo(
            "Every setting within what was tried may char more than 5 % of patches, so there is no"
                + " best setting yet.");
    assertThat(why(3, new Shortfall(true, Optional.empty(), false, false, false)))
        .isEqualTo(
            "No setting within what was tried keeps either limit (char at most 5 %, clearing at"
                + " least 90 %), so there is no best setting yet.");
  }

  @Test
  void a_window_that_only_untried_speeds_would_open_says_so() {
    assertThat(why(3, new Shortfall(true, Optional.of(MAY_NOT_CLEAR), false, true, false)))
        .contains("A window would need a hand speed outside ")
        .endsWith(" mm/s, the range of the trials.");
  }

  @ParameterizedTest
  @CsvSource({
    "12, 3, 0.19, NONE",
    "11, 3, 0.19, NOT_YET",
    "12, 2, 0.19, NOT_YET",
    "12, 3, 0.2, NOT_YET"
  })
  void without_a_box_there_is_none_only_where_hope_is_small_on_enough_patches(
      int patches, int boards, double chance, Verdict expected) {
    assertThat(
            verdict(
                new Evidence(patches, boards, patches, 2, 3),
                Severity.FINE,
                Severity.FINE,
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
    assertThat(answer.nextSteps()).containsExactly(new NextStep.BurnNextPatches());
  }

  @ParameterizedTest
  @CsvSource({"FAILS, FINE", "FINE, FAILS"})
  void either_model_that_fails_makes_the_answer_unreliable(Severity charring, Severity clearing) {
    Evidence plenty = new Evidence(20, 5, 40, 6, 9);
    assertThat(verdict(plenty, charring, clearing, Optional.of(BOX), 0.9))
        .isEqualTo(Verdict.UNRELIABLE);
    assertThat(verdict(plenty, charring, clearing, Optional.empty(), 0.01))
        .isEqualTo(Verdict.UNRELIABLE);
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
