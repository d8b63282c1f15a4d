package charline.stat.check;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.special.Gamma;

/**
 * Hosmer and Lemeshow's test: outcomes counted against expected counts in groups of like risk
 * (Hosmer and Lemeshow 1980, Communications in Statistics A 9:1043-1069). Two groupings are in use
 * and can disagree widely, so the one used has to be named beside the number.
 *
 * @param groups how many are asked for, at least 3
 * @param grouping how rows are dealt out
 */
public record HosmerLemeshow(int groups, Grouping grouping) {

  /** How rows are dealt to groups. */
  public enum Grouping {
    /**
     * Cut at sample quantiles of the risks, interpolated at {@code (n-1) p + 1} (Hyndman and Fan
     * 1996, definition 7); cut points that coincide are dropped, groups are closed on the right.
     */
    QUANTILE_CUT,
    /** The row of rank r goes to group ceiling(groups r / n); ties in order of appearance. */
    RANK_SPLIT
  }

  public HosmerLemeshow {
    if (groups < 3) {
      throw new IllegalArgumentException(
          "Groups must be 3 or more, not " + groups + "; 10 is usual.");
    }
  }

  /** Ten groups, cut at quantiles. */
  public static HosmerLemeshow withDefaults() {
    return new HosmerLemeshow(10, Grouping.QUANTILE_CUT);
  }

  public HosmerLemeshow withGroups(int count) {
    return new HosmerLemeshow(count, grouping);
  }

  public HosmerLemeshow with(Grouping other) {
    return new HosmerLemeshow(groups, other);
  }

  /** What became of the test. */
  public sealed interface Outcome permits Tested, TooFewGroups {}

  /**
   * The test's answer.
   *
   * @param statistic sum of (observed - expected)² / (expected (1 - expected / rows))
   * @param degreesOfFreedom groups that came about, less 2
   * @param probability of a larger statistic if the risks were right, by chi-square
   * @param groups lowest risk first
   */
  public record Tested(
      double statistic, int degreesOfFreedom, double probability, List<Group> groups)
      implements Outcome {
    public Tested {
      groups = List.copyOf(groups);
    }
  }

  /** One group: its rows, the events in them, and how many were expected. */
  public record Group(int rows, int events, double expected) {}

  /**
   * The risks do not fall into three groups.
   *
   * @param message one sentence: what was found and what to do
   */
  public record TooFewGroups(String message) implements Outcome {}

  /**
   * Tests risks against outcomes.
   *
   * @param outcomes 0 or 1
   * @param risks as many, strictly between 0 and 1
   * @throws IllegalArgumentException if the lengths differ or a value is out of range
   */
  public Outcome test(int[] outcomes, double[] risks) {
    RiskCheck.requirePairs(outcomes, risks);
    for (int i = 0; i < risks.length; i++) {
      if (risks[i] == 0 || risks[i] == 1) {
        throw new IllegalArgumentException(
            "A fitted risk must be neither 0 nor 1, but is %s in row %d; fit with a penalty."
                .formatted(risks[i], i + 1));
      }
    }
    int[] group = grouping == Grouping.QUANTILE_CUT ? quantileCut(risks) : rankSplit(risks);
    List<Group> filled =
        IntStream.range(0, groups)
            .mapToObj(g -> group(g, group, outcomes, risks))
            .filter(g -> g.rows() > 0)
            .toList();
    if (filled.size() < 3) {
      return new TooFewGroups(
          "The test needs at least 3 groups of like risk, but only %d came about; compare observed with fitted shares directly."
              .formatted(filled.size()));
    }
    double statistic = 0;
    for (Group g : filled) {
      double residual = g.events() - g.expected();
      statistic += residual * residual / (g.expected() * (1 - g.expected() / g.rows()));
    }
    int freedom = filled.size() - 2;
    return new Tested(
        statistic,
        freedom,
        Gamma.regularizedGammaQ(freedom / 2.0, statistic / 2, 1e-15, 100_000),
        filled);
  }

  private static Group group(int wanted, int[] group, int[] outcomes, double[] risks) {
    int rows = 0;
    int events = 0;
    double expected = 0;
    for (int i = 0; i < risks.length; i++) {
      if (group[i] == wanted) {
        rows++;
        events += outcomes[i];
        expected += risks[i];
      }
    }
    return new Group(rows, events, expected);
  }

  private int[] quantileCut(double[] risks) {
    double[] sorted = risks.clone();
    Arrays.sort(sorted);
    double[] cuts =
        IntStream.range(1, groups)
            .mapToDouble(k -> quantile(sorted, k / (double) groups))
            .distinct()
            .toArray();
    return IntStream.range(0, risks.length)
        .map(i -> (int) Arrays.stream(cuts).filter(cut -> risks[i] > cut).count())
        .toArray();
  }

  private static double quantile(double[] sorted, double share) {
    double place = (sorted.length - 1) * share;
    double rounding = 4 * Math.ulp(1.0) * sorted.length;
    int below = (int) Math.floor(place + rounding);
    double rest = place - below;
    return rest <= rounding
        ? sorted[below]
        : sorted[below] + rest * (sorted[below + 1] - sorted[below]);
  }

  private int[] rankSplit(double[] risks) {
    int n = risks.length;
    int[] order =
        IntStream.range(0, n)
            .boxed()
            .sorted(Comparator.comparingDouble(i -> risks[i]))
            .mapToInt(Integer::intValue)
            .toArray();
    int[] group = new int[n];
    for (int r = 0; r < n; r++) {
      group[order[r]] = (int) ((groups * (r + 1L) + n - 1) / n) - 1;
    }
    return group;
  }
}
