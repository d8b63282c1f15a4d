package charline.paper;

import java.util.ArrayList;
import java.util.List;

/**
 * A logarithmic axis from values to drawing units.
 *
 * @param low value at {@code from}, above 0
 * @param high value at {@code to}, above {@code low}
 * @param from drawing unit of the low end
 * @param to drawing unit of the high end; may be below {@code from}
 */
record LogAxis(double low, double high, double from, double to) {
  private static final double[][] MANTISSAS = {
    {1, 2, 5}, {1, 1.5, 2, 3, 5, 7}, {1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 7, 8, 9}
  };
  private static final int ENOUGH_TICKS = 4;

  /** The axis on which evenly spaced (in the logarithm) cell centres sit in the middle of cells. */
  static LogAxis aroundCells(List<Double> centres, double from, double to) {
    double first = centres.get(0);
    double last = centres.get(centres.size() - 1);
    double half = centres.size() == 1 ? 1.1 : Math.pow(last / first, 0.5 / (centres.size() - 1));
    return new LogAxis(first / half, last * half, from, to);
  }

  double place(double value) {
    return from + (to - from) * Math.log(value / low) / Math.log(high / low);
  }

  boolean contains(double value) {
    return value >= low && value <= high;
  }

  /** Round values on the axis, at least four where round values allow, no closer than given. */
  List<Double> ticks(double leastApart) {
    for (double[] mantissas : MANTISSAS) {
      List<Double> ticks = withMantissas(mantissas);
      if (ticks.size() >= ENOUGH_TICKS) {
        return thinned(ticks, leastApart);
      }
    }
    return thinned(evenSteps(), leastApart);
  }

  private List<Double> withMantissas(double[] mantissas) {
    List<Double> ticks = new ArrayList<>();
    int top = (int) Math.ceil(Math.log10(high));
    for (int power = (int) Math.floor(Math.log10(low)); power <= top; power++) {
      for (double mantissa : mantissas) {
        double tick = mantissa * Math.pow(10, power);
        if (contains(tick)) {
          ticks.add(tick);
        }
      }
    }
    return ticks;
  }

  /** For an axis so short that few round mantissas fall on it. */
  private List<Double> evenSteps() {
    double rough = (high - low) / ENOUGH_TICKS;
    double decade = Math.pow(10, Math.floor(Math.log10(rough)));
    double step = decade * (rough < 2 * decade ? 1 : rough < 5 * decade ? 2 : 5);
    List<Double> ticks = new ArrayList<>();
    for (long i = (long) Math.ceil(low / step); i * step <= high; i++) {
      ticks.add(i * step);
    }
    return ticks;
  }

  private List<Double> thinned(List<Double> ticks, double leastApart) {
    List<Double> kept = new ArrayList<>();
    for (double tick : ticks) {
      if (kept.isEmpty()
          || Math.abs(place(tick) - place(kept.get(kept.size() - 1))) >= leastApart) {
        kept.add(tick);
      }
    }
    return kept;
  }
}
