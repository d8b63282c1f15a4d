package charline.plan;

/** What a patch is expected to do to the window. */
public sealed interface Gain {
  /**
   * It narrows the two dose limits. All are distances of a one-sided 90 % limit from the middle, in
   * ln dose.
   */
  record Narrows(double hotAfter, double hotNow, double coldAfter, double coldNow)
      implements Gain {}

  /** It shows what the lowest rung does. */
  record LowestRung() implements Gain {}

  /** It adds one patch to the run at the start setting that needs no model. */
  record LongerRun() implements Gain {}

  /** It shows how far one piece lies from the average board. */
  record PlacesPiece() implements Gain {}

  /** It sets a change of the rig apart from one of the settings. */
  record SeesDrift() implements Gain {}
}
