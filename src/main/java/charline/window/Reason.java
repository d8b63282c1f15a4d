package charline.window;

import charline.model.check.FitFinding;
import java.util.List;
import java.util.OptionalInt;

/** Why a verdict is what it is: one fact with its numbers. */
public sealed interface Reason {
  /**
   * Everywhere in the ranges both promises hold.
   *
   * @param narrow the range of hand speed is narrower than a steady hand keeps to
   */
  record PromisesKept(Requirements asked, boolean narrow) implements Reason {}

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

  /** The best setting so far breaks a promise. */
  record BestSettingBreaks(Forecast best, SpeedKnob.Kind speed, Requirements asked)
      implements Reason {}

  /** No patch charred: a window reaches no hotter than so many unharmed patches. */
  record CharNotSeen(int unharmed) implements Reason {}

  /**
   * Too few patches kept finish: a window reaches no cooler than so many that cleared.
   *
   * @param uncleared patches with finish left that it takes
   * @param cleared cleared patches that a window needs below it until then
   */
  record FinishNotSeen(int uncleared, int cleared) implements Reason {}

  /** A promise about a board not seen yet takes more patches, on more boards. */
  record TooFewPatches(int patches, int boards, int patchesNeeded, int boardsNeeded)
      implements Reason {}

  /**
   * Boards differ too much to promise for another.
   *
   * @param factor by which one board in three is off the average, or more
   * @param boardsNeeded boards that would measure it; empty where these do and it is too much
   */
  record BoardsDiffer(double factor, int boards, OptionalInt boardsNeeded) implements Reason {}

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
