package charline.cli.board;

import charline.quantity.Figures;
import charline.trial.Board;
import charline.wording.Facts;
import charline.wording.Json;
import java.util.Optional;

/** A board as text and as JSON. */
final class BoardView {
  private BoardView() {}

  static Optional<String> moisture(Board board) {
    return Figures.plain(board.moisturePercent(), "%");
  }

  static String text(Board board, Optional<String> voided) {
    return new Facts("Board " + board.name() + voided.map(why -> " (void)").orElse(""))
        .add("void because", voided)
        .add("wood", board.wood())
        .add("form", board.form().word())
        .add("condition", board.condition())
        .add("moisture", moisture(board))
        .add("job", board.job())
        .text();
  }

  static Json json(Board board) {
    return new Json()
        .put("board", board.name())
        .put("wood", board.wood())
        .put("form", board.form().word())
        .put("condition", board.condition())
        .put("moisture_pct", board.moisturePercent())
        .put("job", board.job());
  }
}
