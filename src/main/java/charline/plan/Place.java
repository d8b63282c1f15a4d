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
  private static final String FRESH = "new board ";

  static Place of(Board board) {
    return new Place(board.name(), Optional.of(board));
  }

  static Place fresh(int number) {
    return new Place(FRESH + number, Optional.empty());
  }

  /** True if the board is still to be found. */
  public boolean isFresh() {
    return board.isEmpty() && name.startsWith(FRESH);
  }

  Optional<UUID> id() {
    return board.map(Board::id);
  }
}
