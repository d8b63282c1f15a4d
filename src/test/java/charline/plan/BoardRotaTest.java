package charline.plan;

import static charline.trial.Pieces.board;
import static charline.trial.Pieces.finish;
import static charline.trial.Pieces.patch;
import static charline.trial.Pieces.reading;
import static charline.trial.Pieces.rig;
import static org.assertj.core.api.Assertions.assertThat;

import charline.trial.Board;
import charline.trial.Patch;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** On which board the next patch comes, whatever the lots. */
class BoardRotaTest {
  private static Patch on(int number, Board board) {
    return patch(
        number,
        rig(1, "Heron", 200),
        board,
        finish(1, "latex"),
        InventedShop.BENCH.settings(50, 20),
        reading(1, "residue"));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void the_board_with_the_fewest_comes_first_and_one_at_hand_before_a_new_one(long seed) {
    Board often = board(1, "pine");
    Board never = board(2, "pine");
    BoardRota rota =
        new BoardRota(
            List.of(on(1, often), on(2, often)), List.of(often, never), 3, new Random(seed));
    assertThat(IntStream.range(0, 4).mapToObj(k -> rota.next().name()).toList())
        .containsExactly("board 2", "new board 1", "board 2", "new board 1");
    assertThat(rota.next().isFresh()).isFalse();
  }
}
