package charline.pooling;

import charline.stat.interval.ClopperPearson;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.apache.commons.math3.distribution.BinomialDistribution;

/**
 * Worlds in which a count came out higher with borrowing than without, and lower. Each world is its
 * own control, and only those that differ say which way is the better (McNemar 1947, Psychometrika
 * 12:153-157); what chance alone makes of them is binomial with one half.
 *
 * @param more worlds with a higher count
 * @param fewer worlds with a lower one
 * @param same all others
 */
public record Pairs(int more, int fewer, int same) {
  private static final double CONFIDENCE = 0.95;

  /** Counts, by world, how many answers of each way are so. */
  static Pairs of(List<Told> told, Predicate<Told> so) {
    Map<Integer, Integer> net = new TreeMap<>();
    for (Told each : told) {
      int one = so.test(each) ? 1 : 0;
      net.merge(each.number(), each.way().equals(PoolingTrial.BORROWED) ? one : -one, Integer::sum);
    }
    return new Pairs(
        (int) net.values().stream().filter(n -> n > 0).count(),
        (int) net.values().stream().filter(n -> n < 0).count(),
        (int) net.values().stream().filter(n -> n == 0).count());
  }

  /** Chance of so uneven a split, or a more uneven one, if borrowing made no difference. */
  public double byChance() {
    int n = more + fewer;
    return n == 0
        ? 1
        : Math.min(
            1,
            2
                * new BinomialDistribution(null, n, 0.5)
                    .cumulativeProbability(Math.min(more, fewer)));
  }

  /** True if chance makes so uneven a split in fewer than one case of twenty. */
  public boolean beyondChance() {
    return byChance() < 1 - CONFIDENCE;
  }

  /** Such as {@code 7 more, 1 fewer (p 0.07)}. */
  public String words() {
    return more + fewer == 0
        ? "no world differs"
        : String.format(Locale.ROOT, "%d more, %d fewer (p %.2g)", more, fewer, byChance());
  }

  /** Of the worlds that differ, the share with more, as an exact 95 % interval. */
  public String share() {
    if (more + fewer == 0) {
      return "-";
    }
    ClopperPearson share = new ClopperPearson(more, more + fewer);
    double each = 0.5 + CONFIDENCE / 2;
    return String.format(
        Locale.ROOT, "%.0f to %.0f %%", 100 * share.atLeast(each), 100 * share.atMost(each));
  }
}
