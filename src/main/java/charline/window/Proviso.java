package charline.window;

import charline.model.CoatContradiction;

/** What a person has to know to use an answer as it is meant. */
public sealed interface Proviso {
  /**
   * The limit asked for is below half a patch in all that were burned, so that most likely none of
   * them would show it: the answer hangs on the shape that the model gives the tail of the risk.
   *
   * @param charRisk the limit
   * @param patches patches behind the answer
   */
  record HangsOnTail(double charRisk, int patches) implements Proviso {}

  /**
   * The seams of the window get more passes than any patch had.
   *
   * @param passes passes of a seam
   * @param mostTried most passes of any patch
   */
  record SeamBeyondTrials(int passes, int mostTried) implements Proviso {}

  /** The trials contradict themselves about the coat, so that what is clean may not be. */
  record CoatContradicted(CoatContradiction what) implements Proviso {}
}
