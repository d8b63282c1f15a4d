package charline.window;

import static charline.trial.Pieces.NOON;
import static org.assertj.core.api.Assertions.assertThat;

import charline.exposure.Exposure;
import charline.trial.Board;
import charline.trial.Patch;
import charline.trial.Pieces;
import charline.trial.Reading;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Which patches on the piece confirm a window, and which take it back. */
class PieceControlsTest {
  private static final RigSetup BENCH = RigSetup.usual(Pieces.rig(1, "Heron", 200), NOON);
  private static final Board DOOR = Pieces.board(7, "pine");
  private static final Board OTHER = Pieces.board(8, "pine");

  /** Start 60 %, 30 mm/s, 2 passes; hottest corner 70 %, 25 mm/s; coldest 50 %, 36 mm/s. */
  private static final Box BOX =
      new Box(2, new Range(50, 70), new Range(25, 36), at(60, 30), at(70, 25), at(50, 36));

  private int codes;

  private static Forecast at(double percent, double speed) {
    Exposure exposure = BENCH.exposure(percent, speed);
    return new Forecast(
        percent,
        exposure.deliveredWatts(),
        speed,
        2,
        exposure.doseJoulesPerCm2(),
        exposure.intensity(),
        0.01,
        0.04,
        0.97,
        0.92,
        500);
  }

  /** Readings as pairs: passes, outcome. */
  private Patch burned(Board board, double percent, double speed, Object... readings) {
    List<Reading> all = new ArrayList<>();
    for (int k = 0; k < readings.length; k += 2) {
      all.add(Pieces.reading((int) readings[k], (String) readings[k + 1]));
    }
    return Pieces.patch(
        ++codes,
        BENCH.rig(),
        board,
        Pieces.finish(1, "latex"),
        BENCH.settings(percent, speed),
        all.toArray(Reading[]::new));
  }

  private static PieceControls controls(Patch... patches) {
    return PieceControls.of(BOX, List.of(patches), DOOR.id(), false);
  }

  @Test
  void three_clean_patches_at_the_start_are_all_that_is_wanting() {
    Patch one = burned(DOOR, 60, 30, 1, "residue", 2, "clean");
    Patch two = burned(DOOR, 60, 30, 2, "clean", 5, "char");
    Patch three = burned(DOOR, 62, 30, 2, "clean");
    assertThat(controls().wanting()).isEqualTo(3);
    assertThat(controls(one, two).wanting()).isEqualTo(1);
    assertThat(controls(one, two, three).wanting()).isZero();
    assertThat(controls(one, two, three).charred()).isEmpty();
  }

  @Test
  void cooler_patches_other_boards_and_unfinished_ones_do_not_count_as_clean() {
    assertThat(
            controls(
                    burned(DOOR, 50, 35, 2, "clean"),
                    burned(OTHER, 60, 30, 2, "clean"),
                    burned(DOOR, 60, 30, 1, "clean"),
                    burned(DOOR, 60, 30, 1, "residue", 3, "clean"),
                    burned(DOOR, 60, 30, 2, "residue", 3, "clean"),
                    burned(DOOR, 60, 30, 2, "tint"))
                .clean())
        .isEmpty();
    assertThat(controls(burned(DOOR, 68, 26, 2, "clean")).clean()).hasSize(1);
    assertThat(controls(burned(DOOR, 90, 20, 2, "clean")).clean()).isEmpty();
  }

  @Test
  void a_patch_that_charred_by_its_passes_speaks_against_it_unless_it_was_hotter() {
    assertThat(controls(burned(DOOR, 60, 30, 2, "char")).charred()).hasSize(1);
    assertThat(controls(burned(DOOR, 40, 40, 1, "char")).charred())
        .as("cooler than the coldest corner")
        .hasSize(1);
    assertThat(controls(burned(DOOR, 60, 30, 1, "clean", 4, "char")).charred())
        .as("charred between one pass and four")
        .hasSize(1);
    assertThat(controls(burned(DOOR, 60, 30, 2, "clean", 4, "char")).charred()).isEmpty();
    assertThat(controls(burned(DOOR, 80, 20, 1, "char")).charred()).isEmpty();
    assertThat(controls(burned(OTHER, 60, 30, 1, "char")).charred()).isEmpty();
  }
}
