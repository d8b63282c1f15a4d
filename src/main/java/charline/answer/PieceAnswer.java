package charline.answer;

import charline.model.PieceFits;
import charline.window.Recommendation;
import java.util.Optional;

/**
 * What the patches of one piece changed.
 *
 * @param fits both models of the piece, with the shifts that its patches show
 * @param general the answer for any board, from the other boards alone; empty where there are none
 */
public record PieceAnswer(PieceFits fits, Optional<Recommendation> general) {}
