package charline.plan;

import charline.quantity.Invariant;
import org.apache.commons.math3.distribution.BetaDistribution;

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
    return bad == patches
        ? 1
        : new BetaDistribution(null, bad + 1.0, patches - bad)
            .inverseCumulativeProbability(confidence);
  }

  /** Patches in a row without a bad one that it takes to support a risk. */
  public static int needed(double risk, double confidence) {
    Invariant.within("Risk", risk, 0.0001, 0.9999, "");
    Invariant.within("Confidence", confidence, 0.5, 0.999, "");
    return (int) Math.ceil(Math.log1p(-confidence) / Math.log1p(-risk) - 1e-9);
  }
}
