package charline.model.check;

import charline.stat.distribution.CountDistribution;
import charline.stat.interval.ClopperPearson;
import java.util.ArrayList;
import java.util.List;

/**
 * Readings to which the model, fitted to the other patches, gave similar chances of showing the
 * event.
 *
 * @param from lowest chance of the bin
 * @param to highest chance of the bin
 * @param readings readings in it
 * @param seen of them, how many showed the event
 * @param predicted mean of the chances given
 * @param low lower bound on the true share, 90 % confidence (Clopper and Pearson 1934)
 * @param high upper bound on the true share
 * @param tail two-sided tail probability of the seen count were the chances right
 */
public record CalibrationBin(
    double from,
    double to,
    int readings,
    int seen,
    double predicted,
    double low,
    double high,
    double tail) {
  private static final double[] EDGES = {0, 0.2, 0.5, 0.8, 1};
  private static final double EACH_SIDE = 0.95;

  /** Bins with at least one reading. */
  static List<CalibrationBin> of(List<LeftOut> patches) {
    List<CalibrationBin> bins = new ArrayList<>();
    for (int b = 1; b < EDGES.length; b++) {
      List<Double> chances = new ArrayList<>();
      int seen = 0;
      for (LeftOut p : patches) {
        for (int k = 0; k < p.patch().readings(); k++) {
          double chance = p.hazard(k);
          if (chance <= EDGES[b] && (chance > EDGES[b - 1] || b == 1)) {
            chances.add(chance);
            seen += p.patch().seenAt(k) ? 1 : 0;
          }
        }
      }
      if (!chances.isEmpty()) {
        bins.add(of(EDGES[b - 1], EDGES[b], chances, seen));
      }
    }
    return bins;
  }

  private static CalibrationBin of(double from, double to, List<Double> chances, int seen) {
    int n = chances.size();
    double[] each = chances.stream().mapToDouble(Double::doubleValue).toArray();
    CountDistribution count = new CountDistribution(CountDistribution.ofTrials(each));
    ClopperPearson bounds = new ClopperPearson(seen, n);
    return new CalibrationBin(
        from,
        to,
        n,
        seen,
        count.mean() / n,
        bounds.atLeast(EACH_SIDE),
        bounds.atMost(EACH_SIDE),
        count.tail(seen));
  }
}
