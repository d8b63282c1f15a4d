package charline.model.check;

/**
 * One patch against the model fitted to all the others.
 *
 * @param code the patch's short code
 * @param sooner chance the others gave to the event coming sooner than it was seen
 * @param asSeen chance they gave to what was seen
 * @param later chance they gave to the event coming later than it was seen
 * @param tail two-sided tail probability, half of {@code asSeen} counted in either tail
 * @param adjusted the same with the number of patches taken into account (Benjamini-Hochberg)
 * @param kHat Pareto k-hat of leaving the patch out
 * @param refitted whether the model was fitted anew without it, as k-hat was too high and patches
 *     few
 */
public record PatchCheck(
    String code,
    double sooner,
    double asSeen,
    double later,
    double tail,
    double adjusted,
    double kHat,
    boolean refitted) {
  /** True if the model finds the patch surprising enough to name it. */
  public boolean surprising() {
    return adjusted < FitChecks.SURPRISING;
  }
}
