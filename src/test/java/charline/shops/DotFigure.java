package charline.shops;

import java.util.List;
import java.util.OptionalDouble;

/**
 * Shares by row, a dot with its bounds for each series.
 *
 * @param title above the figure
 * @param axis what the shares are of
 * @param series names, at most three
 * @param rows one per scenario
 * @param limit where a line marks what was promised
 */
record DotFigure(
    String title, String axis, List<String> series, List<Row> rows, OptionalDouble limit) {
  private static final int LEFT = 190;
  private static final int RIGHT = 620;
  private static final int TOP = 72;
  private static final int ROW = 26;

  /** A scenario with one share per series. */
  record Row(String name, List<Share> shares) {}

  String svg() {
    int bottom = TOP + ROW * rows.size();
    Svg svg = new Svg(RIGHT + 40, bottom + 52, title);
    legend(svg);
    for (int tick = 0; tick <= 10; tick++) {
      svg.line(x(tick / 10.0), TOP, x(tick / 10.0), bottom, Svg.Stroke.FAINT);
      svg.words(x(tick / 10.0), bottom + 18, 10 * tick + " %", "middle", 11);
    }
    limit.ifPresent(at -> svg.line(x(at), TOP, x(at), bottom, Svg.Stroke.DASHED));
    for (int r = 0; r < rows.size(); r++) {
      double middle = TOP + ROW * (r + 0.5);
      svg.words(LEFT - 10, middle + 4, rows.get(r).name(), "end", 12);
      List<Share> shares = rows.get(r).shares();
      for (int s = 0; s < shares.size(); s++) {
        Share share = shares.get(s);
        if (share.of() > 0) {
          Svg.Mark mark = Svg.Mark.values()[s];
          double y = middle + 7 * (s - (shares.size() - 1) / 2.0);
          svg.bar(x(share.lower()), y, x(share.upper()), y, mark);
          svg.mark(x(share.value()), y, mark);
        }
      }
    }
    svg.words((LEFT + RIGHT) / 2.0, bottom + 40, axis, "middle", 13);
    return svg.text();
  }

  private void legend(Svg svg) {
    for (int s = 0; s < series.size(); s++) {
      double x = 30 + 210 * s;
      svg.mark(x, 46, Svg.Mark.values()[s]);
      svg.words(x + 12, 50, series.get(s), "start", 12);
    }
  }

  private static double x(double share) {
    return LEFT + share * (RIGHT - LEFT);
  }
}
