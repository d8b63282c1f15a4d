package charline.window;

import java.util.stream.DoubleStream;

/** The powers a person can dial that were tried, on the dial's own steps. */
final class PowerDial {
  private static final double[] STEPS = {1, 0.5, 0.1};
  private static final double SLACK = 1e-9;

  private PowerDial() {}

  /**
   * Powers in percent, rising: whole percents where two or more lie in the range, finer steps where
   * the range is narrower, its upper end where nothing else lies in it. Empty above the dial.
   */
  static double[] powers(double lowPercent, double highPercent) {
    double low = lowPercent * (1 - SLACK);
    double high = Math.min(highPercent * (1 + SLACK), 100);
    if (low > high) {
      return new double[0];
    }
    for (double step : STEPS) {
      long first = (long) Math.ceil(low / step);
      long last = (long) Math.floor(high / step);
      if (last > first || (last == first && highPercent / lowPercent < 1 + 1e-6)) {
        return DoubleStream.iterate(first, k -> k <= last, k -> k + 1).map(k -> k * step).toArray();
      }
    }
    return new double[] {Math.min(highPercent, 100)};
  }
}
