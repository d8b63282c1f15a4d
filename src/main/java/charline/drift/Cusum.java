package charline.drift;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/**
 * Cumulative sums of standardised values against a slow shift, one-sided each way (Page 1954,
 * Biometrika 41:100).
 *
 * @param allowance k, half of the shift that is to be found, in standard deviations
 * @param limit h, the sum that signals, in standard deviations
 */
record Cusum(double allowance, double limit) {
  /** Finds a shift of one standard deviation; a false alarm in about 170 values, either way. */
  static final Cusum USUAL = new Cusum(0.5, 4);

  /**
   * Sums after one value.
   *
   * @param up sum of what lies above, 0 or more
   * @param down sum of what lies below, 0 or more
   */
  record Sums(double up, double down) {}

  /**
   * Sums after every value; they begin anew with each run.
   *
   * @param runs number of the run of each value, rising
   */
  List<Sums> sums(List<Double> values, List<Integer> runs) {
    List<Sums> all = new ArrayList<>();
    int from = 0;
    while (from < values.size()) {
      int run = runs.get(from);
      int to = runs.lastIndexOf(run) + 1;
      all.addAll(sums(values.subList(from, to)));
      from = to;
    }
    return all;
  }

  /** Sums after every value. */
  List<Sums> sums(List<Double> values) {
    List<Sums> all = new ArrayList<>();
    double up = 0;
    double down = 0;
    for (double value : values) {
      up = Math.max(0, up + value - allowance);
      down = Math.max(0, down - value - allowance);
      all.add(new Sums(up, down));
    }
    return all;
  }

  /** Index of the first value that signals, empty if none does. */
  OptionalInt signal(List<Sums> sums) {
    for (int i = 0; i < sums.size(); i++) {
      if (signals(sums.get(i))) {
        return OptionalInt.of(i);
      }
    }
    return OptionalInt.empty();
  }

  boolean signals(Sums sums) {
    return sums.up() > limit || sums.down() > limit;
  }

  /** Index of the first value after the shift: the sum that signals was 0 just before it. */
  int since(List<Sums> sums, int signal) {
    boolean upwards = sums.get(signal).up() > limit;
    int first = signal;
    while (first > 0 && (upwards ? sums.get(first - 1).up() : sums.get(first - 1).down()) > 0) {
      first--;
    }
    return first;
  }
}
