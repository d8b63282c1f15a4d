package charline.shops;

import java.util.List;

/**
 * What was foretold against what happened, for char and clearing.
 *
 * @param title above the figure
 * @param charring classes of foretold char risk
 * @param clearing classes of foretold clearing chance
 */
record ReliabilityFigure(String title, List<Reliability> charring, List<Reliability> clearing) {
  private static final int LEFT = 70;
  private static final int TOP = 70;
  private static final int SIDE = 420;

  String svg() {
    Svg svg = new Svg(LEFT + SIDE + 40, TOP + SIDE + 60, title);
    svg.mark(120, 46, Svg.Mark.DISC);
    svg.words(132, 50, "char", "start", 12);
    svg.mark(220, 46, Svg.Mark.RING);
    svg.words(232, 50, "clearing", "start", 12);
    for (int tick = 0; tick <= 10; tick += 2) {
      double share = tick / 10.0;
      svg.line(x(share), y(0), x(share), y(1), Svg.Stroke.FAINT);
      svg.line(x(0), y(share), x(1), y(share), Svg.Stroke.FAINT);
      svg.words(x(share), y(0) + 18, 10 * tick + " %", "middle", 11);
      svg.words(x(0) - 8, y(share) + 4, 10 * tick + " %", "end", 11);
    }
    svg.line(x(0), y(0), x(1), y(1), Svg.Stroke.DASHED);
    points(svg, charring, Svg.Mark.DISC);
    points(svg, clearing, Svg.Mark.RING);
    svg.words(LEFT + SIDE / 2.0, TOP + SIDE + 44, "predicted chance", "middle", 13);
    svg.upward(20, TOP + SIDE / 2.0, "share of patches, observed");
    return svg.text();
  }

  private static void points(Svg svg, List<Reliability> classes, Svg.Mark mark) {
    for (Reliability each : classes) {
      if (each.happened().of() > 0) {
        double x = x(each.foretold());
        svg.bar(x, y(each.happened().lower()), x, y(each.happened().upper()), mark);
        svg.mark(x, y(each.happened().value()), mark);
      }
    }
  }

  private static double x(double share) {
    return LEFT + share * SIDE;
  }

  private static double y(double share) {
    return TOP + (1 - share) * SIDE;
  }
}
