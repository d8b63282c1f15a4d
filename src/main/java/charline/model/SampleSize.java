package charline.model;

/**
 * How many draws the posterior of some trials needs. A quantile of it is off by a fixed share of
 * the posterior's own spread times the root of one over the draws, and that spread falls with the
 * root of the patches. So where patches are many, as many fewer draws leave the error in ln dose no
 * larger than it is for 256 of them, and a stratum of thousands costs little more than one of
 * hundreds.
 *
 * @param divisor what the usual number of draws is divided by: a power of two, as Sobol points ask
 *     for
 */
public record SampleSize(int divisor) {
  private static final int ALL_DRAWS_BELOW = 256;

  /** What many patches on few boards say is soon all that these boards have to say. */
  private static final int COUNTED_ON_A_BOARD = 20;

  /**
   * A thousand draws are left of the usual eight thousand: tails need them, whatever the spread.
   */
  private static final int MOST = 8;

  /** The draws that these trials need. */
  public static SampleSize of(Trials trials) {
    Evidence evidence = trials.evidence();
    return of(evidence.patches(), evidence.boards());
  }

  static SampleSize of(int patches, int boards) {
    int counted = Math.min(patches, COUNTED_ON_A_BOARD * boards);
    return new SampleSize(
        Math.min(MOST, Math.max(1, 2 * Integer.highestOneBit(counted / ALL_DRAWS_BELOW))));
  }

  /** A quarter of the draws, where only the gist is asked, unless they are fewer already. */
  SampleSize sketched() {
    return new SampleSize(Math.max(divisor, MOST / 2));
  }

  /**
   * The draws in place of a usual number.
   *
   * @param usual a power of two, or a round number where draws are taken from draws
   */
  public int draws(int usual) {
    return usual / divisor;
  }
}
