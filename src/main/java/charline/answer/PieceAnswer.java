package charline.answer;

import charline.model.Event;
import charline.model.PieceFits;
import charline.model.check.BoardCheck;
import charline.window.PieceEvidence;
import charline.window.Recommendation;
import java.util.Map;
import java.util.Optional;

/**
 * What the patches of one piece changed.
 *
 * @param known what they say of the piece
 * @param general the answer for any board, from the other boards alone; empty where there are none
 */
public record PieceAnswer(PieceEvidence known, Optional<Recommendation> general) {
  /** Both models of the piece, with the shifts that its patches show. */
  public PieceFits fits() {
    return known.fits();
  }

  /** How far the piece lies off the other boards, where that is further than any should. */
  public Map<Event, BoardCheck> unlike() {
    return known.unlike();
  }
}
