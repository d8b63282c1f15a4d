package charline.model.borrow;

import charline.model.Prior;

/**
 * What a log says of one more stratum, as a prior of one event.
 *
 * @param prior the usual prior, moved where strata have something to say
 * @param tau what its tau rests on
 * @param phi what its phi rests on
 * @param psi what its psi rests on
 * @param lnSigma what its ln sigma rests on
 */
public record Prediction(Prior prior, Backing tau, Backing phi, Backing psi, Backing lnSigma) {
  /**
   * What a number rests on.
   *
   * @param strata how many had something to say
   * @param patches how many they have together
   */
  public record Backing(int strata, int patches) {
    /** Nothing in the log. */
    public static final Backing NONE = new Backing(0, 0);

    /** The same and one more stratum. */
    public Backing plus(int morePatches) {
      return new Backing(strata + 1, patches + morePatches);
    }
  }
}
