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

  /**
   * A patch without tint is clear whether tint is accepted or not, yet the models, which are fitted
   * apart, are surer of the start setting where none is accepted: few patches were left with tint.
   *
   * @param accepting lower bound of the clearing chance with tint accepted
   * @param without the same without
   */
  record TintLeavesLess(double accepting, double without) implements Proviso {}

  /** The trials contradict themselves about the coat, so that what is clean may not be. */
  record CoatContradicted(CoatContradiction what) implements Proviso {}
}
