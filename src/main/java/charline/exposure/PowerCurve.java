package charline.exposure;

import charline.quantity.Invariant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Power on the work over the power setting, as it was metered.
 *
 * <p>Straight lines join the points. Below the lowest and above the highest point the power is in
 * proportion to the setting, with the factor of that point: nothing is known there, and a line
 * through zero neither turns negative nor flat. One point alone therefore gives one factor for all
 * settings, and no point at all gives the rating. The power rises strictly with the setting, so
 * that every power belongs to one setting: points that do not rise are pooled, neighbour with
 * neighbour, into their mean (pool adjacent violators, Ayer et al. 1955).
 *
 * @param points settings and powers, both strictly rising; at least one
 */
public record PowerCurve(List<Point> points) {
  /** So close to a point its factor is taken (common practice, no published source). */
  private static final double NEAR = 1.25;

  /**
   * One metered power.
   *
   * @param percent power setting, above 0
   * @param watts power on the work, above 0
   */
  public record Point(double percent, double watts) {
    public Point {
      Invariant.positive("Power setting", percent, "%");
      Invariant.positive("Metered power", watts, "W");
    }

    private double factor() {
      return watts / percent;
    }
  }

  public PowerCurve {
    points = List.copyOf(points);
    for (int i = 0; i < points.size(); i++) {
      if (i > 0 && !rises(points.get(i - 1), points.get(i))) {
        throw new IllegalArgumentException("a power curve rises in setting and power: " + points);
      }
    }
    if (points.isEmpty()) {
      throw new IllegalArgumentException("a power curve has a point");
    }
  }

  /** The curve of a rig that was never metered: in proportion to its rating at 100 %. */
  public static PowerCurve rated(double ratedWatts) {
    return new PowerCurve(List.of(new Point(100, ratedWatts)));
  }

  /**
   * The curve through metered powers, in any order; of two at one setting the later in the list
   * counts.
   */
  public static PowerCurve through(List<Point> metered) {
    Map<Double, Point> bySetting = new TreeMap<>();
    metered.forEach(point -> bySetting.put(point.percent(), point));
    List<Pool> pools = new ArrayList<>();
    for (Point point : bySetting.values()) {
      Pool pool = new Pool(point.percent(), point.watts(), 1);
      while (!pools.isEmpty() && pools.get(pools.size() - 1).watts >= pool.watts) {
        pool = pools.remove(pools.size() - 1).with(pool);
      }
      pools.add(pool);
    }
    return new PowerCurve(pools.stream().map(p -> new Point(p.percent, p.watts)).toList());
  }

  /** Whether the points say something of a setting: they reach it, or a fifth short of it. */
  public boolean covers(double percent) {
    return points.get(0).percent() <= percent * NEAR
        && points.get(points.size() - 1).percent() * NEAR >= percent;
  }

  private static boolean rises(Point low, Point high) {
    return low.percent() < high.percent() && low.watts() < high.watts();
  }

  /** Means of neighbouring points, and how many they are of. */
  private record Pool(double percent, double watts, int count) {
    Pool with(Pool next) {
      int both = count + next.count;
      return new Pool(
          (percent * count + next.percent * next.count) / both,
          (watts * count + next.watts * next.count) / both,
          both);
    }
  }

  /**
   * Power on the work, in W.
   *
   * @param percent power setting, above 0; may be above what the dial has
   */
  public double watts(double percent) {
    Point low = points.get(0);
    Point high = points.get(points.size() - 1);
    if (percent <= low.percent() || points.size() == 1) {
      return percent == low.percent() ? low.watts() : percent * low.factor();
    }
    if (percent >= high.percent()) {
      return percent == high.percent() ? high.watts() : percent * high.factor();
    }
    int i = 1;
    while (points.get(i).percent() < percent) {
      i++;
    }
    Point a = points.get(i - 1);
    Point b = points.get(i);
    double share = (percent - a.percent()) / (b.percent() - a.percent());
    return share == 1 ? b.watts() : a.watts() + share * (b.watts() - a.watts());
  }

  /**
   * Power setting that gives a power, in percent; above 100 where the dial does not reach it.
   *
   * @param watts power on the work, above 0
   */
  public double percent(double watts) {
    Point low = points.get(0);
    Point high = points.get(points.size() - 1);
    if (watts <= low.watts() || points.size() == 1) {
      return watts == low.watts() ? low.percent() : watts / low.factor();
    }
    if (watts >= high.watts()) {
      return watts == high.watts() ? high.percent() : watts / high.factor();
    }
    int i = 1;
    while (points.get(i).watts() < watts) {
      i++;
    }
    Point a = points.get(i - 1);
    Point b = points.get(i);
    double share = (watts - a.watts()) / (b.watts() - a.watts());
    return share == 1 ? b.percent() : a.percent() + share * (b.percent() - a.percent());
  }
}
