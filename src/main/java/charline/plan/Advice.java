package charline.plan;

import charline.window.NextStep;
import charline.window.Requirements;
import java.util.List;

/** How to go on with a list of patches. */
public sealed interface Advice {
  /** Begin on an offcut. */
  record BeginOnOffcut() implements Advice {}

  /** Burn the list in its order and stop a patch at the first brown. */
  record InOrder() implements Advice {}

  /** Burn the list, each cooler than the one before, until one comes through without char. */
  record DownUntilUnharmed() implements Advice {}

  /**
   * As the window says.
   *
   * @param thenInOrder then burn the list in its order
   */
  record AsFound(List<NextStep> steps, boolean thenInOrder) implements Advice {
    public AsFound {
      steps = List.copyOf(steps);
    }
  }

  /** No setting may be burned there. */
  record NothingAllowed(Site site) implements Advice {}

  /**
   * Burn the list on a place of the piece that will not be seen, coolest first.
   *
   * @param board name of the piece
   * @param patches how many the list has
   * @param expectedBrown how many of them to expect brown
   */
  record OnHiddenPlace(String board, int patches, double expectedBrown) implements Advice {}

  /** The window stands on the piece: nothing more need be burned. */
  record PieceConfirmed(String board) implements Advice {}

  /**
   * Repeat the start setting.
   *
   * @param steps as the window says
   * @param run what was burned at it so far
   * @param asked what the run is to support
   * @param passes passes of the start setting
   */
  record Repeat(List<NextStep> steps, CleanRun run, Requirements asked, int passes)
      implements Advice {
    public Repeat {
      steps = List.copyOf(steps);
    }
  }
}
