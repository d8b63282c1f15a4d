package charline.window;

import charline.model.check.FitFinding;
import java.util.List;
import java.util.Optional;

/** Why a verdict is what it is: one fact with its numbers. */
public sealed interface Reason {
  /**
   * Everywhere in the ranges both promises hold.
   *
   * @param narrow the range of hand speed is narrower than a steady hand keeps to
   * @param piece name of the board that they hold on; empty for a board not seen yet
   */
  record PromisesKept(Requirements asked, boolean narrow, Optional<String> piece)
      implements Reason {}

  /**
   * Where the finish comes off, the wood chars.
   *
   * @param chanceAnyWindow posterior chance that any setting keeps both promises
   */
  record CharsWhereItClears(double chanceAnyWindow) implements Reason {}

  /** No patch charred, so where the wood begins to burn is known from below only. */
  record NoPatchCharred() implements Reason {}

  /** No patch cleared, so what lifts the finish is not known. */
  record NoPatchCleared() implements Reason {}

  /** Nothing that the rig can dial lies inside what was tried. */
  record NothingTried() implements Reason {}

  /** The best setting that keeps the char limit may not clear. */
  record BestMayNotClear(Forecast best, SpeedKnob.Kind speed, Requirements asked)
      implements Reason {}

  /**
   * Nowhere within what was tried is the char limit kept.
   *
   * @param clears the clearing limit is kept somewhere
   */
  record EverySettingMayChar(Requirements asked, boolean clears) implements Reason {}

  /** The speeds that keep both limits lie closer together than a speed can be read. */
  record TooNarrow() implements Reason {}

  /** There would be a window at speeds that no trial had. */
  record OnlyAtOtherSpeeds(SpeedKnob.Kind speed, Range tried) implements Reason {}

  /**
   * Lines lie so far apart that they do not touch.
   *
   * @param spacingMillimetres from line to line
   * @param spotMillimetres diameter of the spot (1/e²)
   */
  record LinesApart(double spacingMillimetres, double spotMillimetres) implements Reason {}

  /**
   * More patches may still take the window away.
   *
   * @param lnMove how far limits still move, in ln dose; the window would not survive it
   */
  record Provisional(double lnMove) implements Reason {}

  /** No patch charred: a window reaches no hotter than so many unharmed patches. */
  record CharNotSeen(int unharmed) implements Reason {}

  /**
   * Too few patches kept finish: a window reaches no cooler than so many that cleared.
   *
   * @param uncleared patches with finish left that it takes
   * @param cleared cleared patches that a window needs below it until then
   */
  record FinishNotSeen(int uncleared, int cleared) implements Reason {}

  /**
   * There would be a window at settings that too few patches came through.
   *
   * @param unharmed patches that have to come through
   * @param burned patches burned in this way
   * @param all patches of the trials
   */
  record TooFewCameThrough(int unharmed, int burned, int all) implements Reason {}

  /**
   * Control patches on the piece charred inside the window.
   *
   * @param patches their codes
   */
  record ControlsCharred(List<String> patches) implements Reason {
    public ControlsCharred {
      patches = List.copyOf(patches);
    }
  }

  /** A window for a piece takes more patches on it where there are few other boards. */
  record TooFewOnPiece(int patches, int needed) implements Reason {}

  /** A promise about a board not seen yet takes more patches, on more boards. */
  record TooFewPatches(int patches, int boards, int patchesNeeded, int boardsNeeded)
      implements Reason {}

  /**
   * Boards are seen to differ, so that a promise about any of them is worth less than one about the
   * piece.
   *
   * @param factor by which one board in three is off the average, or more
   */
  record BoardsDiffer(double factor) implements Reason {}

  /**
   * A model does not fit the trials.
   *
   * @param failing what fails, the first few
   * @param more how many more fail
   */
  record ModelFails(List<FitFinding> failing, int more) implements Reason {
    public ModelFails {
      failing = List.copyOf(failing);
    }
  }
}
