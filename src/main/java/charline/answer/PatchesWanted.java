package charline.answer;

import charline.plan.Site;
import charline.trial.Board;
import java.util.List;

/**
 * How many patches to choose, and for which boards.
 *
 * @param count how many, 1 or more
 * @param site where they are burned
 * @param boards boards at hand; empty for those of the trials and unused ones of the wood
 */
public record PatchesWanted(int count, Site site, List<Board> boards) {
  /** Six on offcuts, on boards of the trials and unused ones of the wood. */
  public static final PatchesWanted USUAL = new PatchesWanted(6, Site.OFFCUT, List.of());

  /** The same on the very piece: on a hidden place of it, unless no place of it may brown. */
  PatchesWanted onPiece() {
    return new PatchesWanted(count, site == Site.OFFCUT ? Site.HIDDEN : site, boards);
  }

  public PatchesWanted {
    boards = List.copyOf(boards);
  }
}
