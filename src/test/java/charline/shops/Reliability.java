package charline.shops;

import java.util.ArrayList;
import java.util.List;

/**
 * One class of foretold chances.
 *
 * @param from lower end of the class
 * @param to upper end
 * @param foretold mean of the chances in it
 * @param happened to how many of the patches it then did
 */
record Reliability(double from, double to, double foretold, Share happened) {
  private static final double[] ENDS = {
    0, 0.02, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.98, 1
  };

  static List<Reliability> of(List<Judged.Probe> probes, boolean charring) {
    List<Reliability> classes = new ArrayList<>();
    for (int k = 0; k + 1 < ENDS.length; k++) {
      double from = ENDS[k];
      double to = ENDS[k + 1];
      boolean last = k + 2 == ENDS.length;
      List<Judged.Probe> in =
          probes.stream()
              .filter(p -> p.charring() == charring)
              .filter(p -> p.foretold() >= from && (p.foretold() < to || last))
              .toList();
      classes.add(
          new Reliability(
              from,
              to,
              in.stream().mapToDouble(Judged.Probe::foretold).average().orElse(Double.NaN),
              new Share((int) in.stream().filter(Judged.Probe::happened).count(), in.size())));
    }
    return classes;
  }
}
