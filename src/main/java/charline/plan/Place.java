package charline.plan;

import charline.trial.Board;
import java.util.Optional;
import java.util.UUID;

/**
 * What a patch is to be burned on.
 *
 * @param name what the person calls it, or "new board 1" where it is still to be found
 * @param board the board, empty where it is not in the log yet
 */
public record Place(String name, Optional<Board> board) {
  static Place of(Board board) {
    return new Place(board.name(), Optional.of(board));
  }

  static Place fresh(int number) {
    return new Place("new board " + number, Optional.empty());
  }

  Optional<UUID> id() {
    return board.map(Board::id);
  }
}
