package charline.paper;

import charline.drift.Drift;
import charline.quantity.Figures;
import charline.trial.Rig;
import charline.wording.DriftText;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;

/**
 * One thing watched of a rig over time, as a drawing: the sum of what lies above and of what lies
 * below, with the limit that neither may pass, and the upkeep that began each run.
 *
 * @param title what is watched
 * @param verdict whether it has drifted, in a few words
 * @param up lines of the sum above, one a run
 * @param down lines of the sum below, one a run
 * @param points values, each with its day, its name and its score
 * @param limit height of the limit
 * @param scale places of round sums
 * @param upkeep places of upkeep, each with what was done
 * @param first the first day
 * @param last the last day
 */
public record DriftChart(
    String title,
    String verdict,
    List<String> up,
    List<String> down,
    List<Point> points,
    double limit,
    List<ChanceChart.Tick> scale,
    List<ChanceChart.Tick> upkeep,
    String first,
    String last) {
  /** Size of the drawing and of the plot in it. */
  public static final int WIDTH = 640;

  public static final int HEIGHT = 220;
  public static final int LEFT = 56;
  public static final int RIGHT = 628;
  public static final int TOP = 22;
  public static final int BOTTOM = 182;

  /** One value. */
  public record Point(double x, double y, String day, String name, String score, boolean over) {}

  /** The charts of a rig, one for each thing watched. */
  public static List<DriftChart> of(Drift drift) {
    return drift.watches().stream().map(watch -> of(watch, drift.rig())).toList();
  }

  private static DriftChart of(Drift.Watch watch, Rig rig) {
    List<Drift.Point> values = watch.points();
    Time time = Time.of(values);
    double most = 1.25 * watch.limit();
    for (Drift.Point p : values) {
      most = Math.max(most, 1.05 * Math.max(p.up(), p.down()));
    }
    Height height = new Height(most);
    List<String> up = new ArrayList<>();
    List<String> down = new ArrayList<>();
    List<Point> points = new ArrayList<>();
    int run = -1;
    for (Drift.Point p : values) {
      double x = time.place(p.at());
      String step = p.run() == run ? "L" : "M";
      if (p.run() != run) {
        up.add("");
        down.add("");
      }
      run = p.run();
      extend(up, step + at(x, height.place(p.up())));
      extend(down, step + at(x, height.place(p.down())));
      double sum = Math.max(p.up(), p.down());
      points.add(
          new Point(
              x,
              height.place(sum),
              p.at().toLocalDate().toString(),
              DriftText.name(p),
              Figures.two(p.score()),
              sum > watch.limit()));
    }
    return new DriftChart(
        DriftText.gauge(watch.gauge()),
        watch
            .since()
            .map(
                s ->
                    "%s since %s"
                        .formatted(watch.weaker() ? "weaker" : "stronger", s.toLocalDate()))
            .orElse("no drift"),
        up,
        down,
        points,
        height.place(watch.limit()),
        List.of(
            new ChanceChart.Tick(height.place(0), "0"),
            new ChanceChart.Tick(height.place(watch.limit()), Figures.three(watch.limit()))),
        rig.upkeep().stream()
            .filter(u -> time.contains(u.at()))
            .map(u -> new ChanceChart.Tick(time.place(u.at()), u.work()))
            .toList(),
        values.get(0).at().toLocalDate().toString(),
        values.get(values.size() - 1).at().toLocalDate().toString());
  }

  private static void extend(List<String> lines, String step) {
    lines.set(lines.size() - 1, lines.get(lines.size() - 1) + step);
  }

  private static String at(double x, double y) {
    return Figures.decimals(x, 1) + " " + Figures.decimals(y, 1);
  }

  private record Time(long from, long to) {
    static Time of(List<Drift.Point> values) {
      long from = values.get(0).at().toEpochSecond();
      long to = values.get(values.size() - 1).at().toEpochSecond();
      return new Time(from, Math.max(from + 1, to));
    }

    double place(OffsetDateTime at) {
      return LEFT + (double) (RIGHT - LEFT) * (at.toEpochSecond() - from) / (to - from);
    }

    boolean contains(OffsetDateTime at) {
      return at.toEpochSecond() >= from && at.toEpochSecond() <= to;
    }
  }

  private record Height(double most) {
    double place(double sum) {
      return BOTTOM - (BOTTOM - TOP) * sum / most;
    }
  }
}
