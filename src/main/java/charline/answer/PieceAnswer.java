package charline.answer;

import charline.model.Event;
import charline.model.PieceFits;
import charline.model.check.BoardCheck;
import charline.window.Recommendation;
import java.util.Map;
import java.util.Optional;

/**
 * What the patches of one piece changed.
 *
 * @param fits both models of the piece, with the shifts that its patches show
 * @param general the answer for any board, from the other boards alone; empty where there are none
 * @param unlike how far the piece lies off the other boards, for each event in which it does so
 *     further than any of them should
 */
public record PieceAnswer(
    PieceFits fits, Optional<Recommendation> general, Map<Event, BoardCheck> unlike) {
  public PieceAnswer {
    unlike = Map.copyOf(unlike);
  }
}
