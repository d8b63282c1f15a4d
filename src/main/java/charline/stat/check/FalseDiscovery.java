package charline.stat.check;

import java.util.Arrays;
import java.util.Comparator;

/**
 * Tail probabilities made comparable over many looks (Benjamini and Hochberg 1995, Controlling the
 * false discovery rate, JRSS B 57:289-300).
 */
public final class FalseDiscovery {
  private FalseDiscovery() {}

  /**
   * Adjusted values: naming everything at or below q names on average at most a share q falsely,
   * and where nothing is wrong it names anything at all with a chance of at most q.
   *
   * @param tails tail probabilities of independent or positively dependent tests
   * @return one per test, in the same order, at most 1
   */
  public static double[] adjust(double[] tails) {
    int n = tails.length;
    Integer[] falling = new Integer[n];
    Arrays.setAll(falling, i -> i);
    Arrays.sort(falling, Comparator.comparingDouble(i -> -tails[i]));
    double[] adjusted = new double[n];
    double least = 1;
    for (int r = 0; r < n; r++) {
      least = Math.min(least, tails[falling[r]] * n / (n - r));
      adjusted[falling[r]] = least;
    }
    return adjusted;
  }
}
