package charline.model;

import charline.model.way.Way;
import charline.trial.Board;

/**
 * Both models for one piece.
 *
 * @param board the piece
 * @param charring of char
 * @param clearing of clearing
 */
public record PieceFits(Board board, PieceFit charring, PieceFit clearing) {
  /**
   * Fits both events.
   *
   * @param board the piece, on which one of the trials or more was burned
   */
  public static PieceFits of(Fitter fitter, Trials trials, Board board) {
    return new PieceFits(
        board,
        PieceFit.of(fitter, trials, Event.CHAR, board.id()),
        PieceFit.of(fitter, trials, Event.CLEARING, board.id()));
  }

  /** The same seen for another way of working. */
  public PieceFits inWay(Way other) {
    return new PieceFits(board, charring.inWay(other), clearing.inWay(other));
  }

  /** How many patches the piece has of its own. */
  public int patches() {
    return charring.patches();
  }

  /** The larger Pareto k-hat of the two weightings. */
  public double paretoK() {
    return Math.max(charring.kHat(), clearing.kHat());
  }

  /** Whether a weighting failed, so that a model was fitted to all patches in its place. */
  public boolean refitted() {
    return charring.refitted() || clearing.refitted();
  }
}
