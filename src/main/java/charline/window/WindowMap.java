package charline.window;

import java.util.List;

/**
 * The map of power against speed for one number of passes, drawn from the posterior.
 *
 * @param passes number of passes
 * @param powersPercent grid lines of power, rising, evenly spaced in the logarithm
 * @param speedsMillimetresPerSecond grid lines of speed, rising, evenly spaced in the logarithm
 * @param rows cells, one row per power, one cell per speed
 */
public record WindowMap(
    int passes,
    List<Double> powersPercent,
    List<Double> speedsMillimetresPerSecond,
    List<List<MapCell>> rows) {
  public WindowMap {
    powersPercent = List.copyOf(powersPercent);
    speedsMillimetresPerSecond = List.copyOf(speedsMillimetresPerSecond);
    rows = rows.stream().map(List::copyOf).toList();
  }
}
