package charline.plan;

import charline.quantity.Invariant;
import charline.stat.interval.ClopperPearson;

/**
 * What a run of repeated patches says of a risk without any model: the exact binomial bound of
 * Clopper and Pearson (1934), one-sided.
 *
 * @param bad patches that charred
 * @param patches all patches, {@code bad} or more
 */
public record CleanRun(int bad, int patches) {
  public CleanRun {
    if (bad < 0 || patches < bad) {
      throw new IllegalArgumentException(
          "Bad patches must be between 0 and all %d patches, not %d.".formatted(patches, bad));
    }
  }

  /**
   * The highest risk that these patches leave possible, with {@code confidence} one-sided: for none
   * bad of n it is 1 - (1 - confidence)^(1/n); 1 where there are none.
   */
  public double upperRisk(double confidence) {
    Invariant.within("Confidence", confidence, 0.5, 0.999, "");
    return bad == patches ? 1 : new ClopperPearson(bad, patches).atMost(confidence);
  }

  /** Patches in a row without a bad one that it takes to support a risk. */
  public static int needed(double risk, double confidence) {
    return ClopperPearson.trialsWithoutEvent(risk, confidence);
  }
}
