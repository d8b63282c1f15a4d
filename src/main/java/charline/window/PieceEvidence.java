package charline.window;

import charline.model.PieceFits;

/**
 * What a window for a piece rests on.
 *
 * @param fits both models of the piece
 * @param controls control patches of the window found, on the piece itself
 */
public record PieceEvidence(PieceFits fits, PieceControls controls) {
  /** Name of the piece's board. */
  public String name() {
    return fits.board().name();
  }
}
