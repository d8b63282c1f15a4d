package charline.window;

import charline.model.Event;
import charline.model.PieceFits;
import charline.model.check.BoardCheck;
import java.util.Map;

/**
 * What a window for a piece rests on.
 *
 * @param fits both models of the piece
 * @param controls control patches of the window found, on the piece itself
 * @param unlike how far the piece lies off the other boards, for each event in which it does so
 *     further than any of them should
 */
public record PieceEvidence(PieceFits fits, PieceControls controls, Map<Event, BoardCheck> unlike) {
  public PieceEvidence {
    unlike = Map.copyOf(unlike);
  }

  /** Name of the piece's board. */
  public String name() {
    return fits.board().name();
  }
}
