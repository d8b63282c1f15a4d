package charline.stat.distribution;

import org.apache.commons.numbers.gamma.ErfDifference;
import org.apache.commons.numbers.gamma.Erfc;
import org.apache.commons.numbers.gamma.InverseErf;
import org.apache.commons.numbers.gamma.InverseErfc;

/** The normal distribution of mean 0 and standard deviation 1. */
public final class StandardNormal {
  private static final double ROOT_TWO = Math.sqrt(2);

  private StandardNormal() {}

  /** Probability of a value below {@code z}. */
  public static double below(double z) {
    return Erfc.value(-z / ROOT_TWO) / 2;
  }

  /** Probability of a value from {@code low} to {@code high}, to full precision in the tails. */
  public static double between(double low, double high) {
    return ErfDifference.value(low / ROOT_TWO, high / ROOT_TWO) / 2;
  }

  /** Probability of a value farther from 0 than {@code z} on either side. */
  public static double beyond(double z) {
    return Erfc.value(Math.abs(z) / ROOT_TWO);
  }

  /**
   * The value that a share of all lies below.
   *
   * @param probability inside (0, 1)
   */
  public static double quantile(double probability) {
    return -ROOT_TWO * InverseErfc.value(2 * probability);
  }

  /**
   * How far from 0 the middle share of all reaches on either side.
   *
   * @param share inside (0, 1)
   */
  public static double reachOfMiddle(double share) {
    return ROOT_TWO * InverseErf.value(share);
  }
}
