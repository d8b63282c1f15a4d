package charline.plan;

import static charline.trial.Pieces.NOON;
import static charline.trial.Pieces.board;
import static charline.trial.Pieces.finish;
import static charline.trial.Pieces.patch;
import static charline.trial.Pieces.reading;
import static charline.trial.Pieces.rig;
import static org.assertj.core.api.Assertions.assertThat;

import charline.exposure.Exposure;
import charline.model.Evidence;
import charline.model.Trials;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.trial.Stratum;
import charline.window.Box;
import charline.window.Forecast;
import charline.window.Range;
import charline.window.Recommendation;
import charline.window.Requirements;
import charline.window.RigSetup;
import charline.window.TriedKnobs;
import charline.window.Verdict;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which patches count in the run at the start setting, which asks no model. */
class ConfirmingRunTest {
  private static final RigSetup BENCH = RigSetup.usual(rig(1, "Heron", 200), NOON);

  private static Patch burned(double percent, double speed, Reading... readings) {
    return patch(
        1,
        BENCH.rig(),
        board(1, "pine"),
        finish(1, "latex"),
        BENCH.settings(percent, speed),
        readings);
  }

  /** Starts at 50 %, 20 mm/s and two passes. */
  private static CleanRun run(Patch patch) {
    Exposure e = BENCH.exposure(50, 20);
    Forecast start =
        new Forecast(
            50, 100, 20, 2, e.doseJoulesPerCm2(), e.intensity(), 0.01, 0.04, 0.98, 0.92, 360);
    Box box = new Box(2, new Range(45, 55), new Range(18, 22), start, start, start);
    Recommendation found =
        new Recommendation(
            Stratum.of(patch),
            Requirements.USUAL,
            new Evidence(1, 1, 1, 0, 1),
            BENCH,
            Verdict.WINDOW,
            List.of(),
            List.of(),
            Optional.empty(),
            TriedKnobs.of(List.of(patch)),
            0.9,
            Optional.of(box),
            List.of(),
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            List.of(patch),
            OptionalDouble.empty());
    return new ConfirmingRun(found, null, null)
        .run(new Trials(Stratum.of(patch), List.of(patch), false));
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          50,   20,   clean,   clean,   0, 1
          50,   20,   clean,   char,    1, 1
          50,   20.5, clean,   clean,   0, 1
          50,   20.7, clean,   clean,   0, 0
          51.8, 20.7, clean,   clean,   0, 0
          """)
  void a_patch_counts_at_a_setting_that_no_hand_tells_from_the_start(
      double percent, double speed, String first, String second, int bad, int patches) {
    assertThat(run(burned(percent, speed, reading(1, first), reading(2, second))))
        .isEqualTo(new CleanRun(bad, patches));
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          1, clean, 0, 0
          1, char,  1, 1
          2, clean, 0, 1
          3, clean, 0, 1
          """)
  void it_counts_once_it_was_read_after_all_passes_or_charred_before(
      int passes, String outcome, int bad, int patches) {
    assertThat(run(burned(50, 20, reading(passes, outcome)))).isEqualTo(new CleanRun(bad, patches));
  }

  /** Unharmed after one pass and charred after three, it may have charred by the second. */
  @Test
  void char_of_a_later_pass_counts_unless_the_patch_was_seen_unharmed_after_all_passes() {
    assertThat(run(burned(50, 20, reading(1, "residue"), reading(3, "char"))))
        .isEqualTo(new CleanRun(1, 1));
    assertThat(run(burned(50, 20, reading(1, "residue"), reading(2, "clean"), reading(3, "char"))))
        .isEqualTo(new CleanRun(0, 1));
  }
}
