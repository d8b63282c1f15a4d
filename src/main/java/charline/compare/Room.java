package charline.compare;

import charline.model.Estimate;

/**
 * What one way leaves between clearing and charring, on a board not seen yet.
 *
 * @param lnRoom natural logarithm of the dose that chars as many as may char over the dose that
 *     clears as many as must; negative where no dose does both
 * @param charDose dose per pass in J/cm² at which the char risk reaches its limit
 * @param clearDose dose per pass in J/cm² at which the clearing chance reaches its target
 * @param charWhereCleared char risk, averaged over the posterior, at the dose that clears as many
 *     as asked with the asked confidence
 * @param charWhereClearedUpper its upper bound with that confidence
 */
public record Room(
    Estimate lnRoom,
    Estimate charDose,
    Estimate clearDose,
    double charWhereCleared,
    double charWhereClearedUpper) {
  /** The room as a ratio of doses. */
  public Estimate ratio() {
    return new Estimate(Math.exp(lnRoom.median()), Math.exp(lnRoom.low()), Math.exp(lnRoom.high()));
  }
}
