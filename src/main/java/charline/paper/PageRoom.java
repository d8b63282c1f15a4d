package charline.paper;

import charline.paper.SheetPage.Line;
import charline.paper.SheetPage.Refusal;
import java.util.ArrayList;
import java.util.List;

/**
 * Shares one page out. The cautions come first and the map takes the height they leave; where that
 * is little, the type gets smaller and the last lines of evidence go. Heights are estimates in mm
 * for the type sizes of the template.
 *
 * @param plotHeight height of the map's plotting area in drawing units of a tenth of a millimetre
 * @param tight true where the page needs its smaller type
 */
record PageRoom(int plotHeight, boolean tight) {
  /** Left empty for fonts that run wider than those that the estimates are for. */
  private static final double SPARE = 3;

  private static final double HEADER = 16;
  private static final double START = 41;
  private static final double MAP_WITHOUT_PLOT = 28;
  private static final double LOWER = 38;
  private static final double FOOTER = 10;
  private static final double GAPS = 5 * 1.8;

  private static final int LOWEST = 240;
  private static final int TIGHT_BELOW = 420;
  private static final int HIGHEST = 720;
  private static final int FEWEST_LINES = 4;

  static PageRoom of(SheetPage page, Paper paper) {
    long plot = plot(page, paper, false);
    boolean tight = plot < TIGHT_BELOW;
    long height = tight ? Math.min(TIGHT_BELOW, plot(page, paper, true)) : plot;
    return new PageRoom((int) Math.max(LOWEST, Math.min(HIGHEST, height)), tight);
  }

  private static long plot(SheetPage page, Paper paper, boolean tight) {
    double others =
        HEADER
            + 9 * (lines(page.title(), 32) - 1)
            + page.before().map(w -> 5.6 + 4.3 * lines(w, 98)).orElse(0.0)
            + page.warning().map(w -> 6 + 4.7 * lines(w, 95)).orElse(0.0)
            + page.refusal().map(refusal -> refusal(refusal, tight)).orElseGet(() -> start(page))
            + LOWER
            + cautions(page)
            + FOOTER
            + GAPS;
    return Math.round(10 * (paper.usableMillimetres() - SPARE - others - MAP_WITHOUT_PLOT));
  }

  private static double start(SheetPage page) {
    return START
        + page.start()
            .map(s -> 4.4 * (lines("Leave as it is: " + s.fixed() + ". " + s.gives(), 115) - 1))
            .orElse(0.0);
  }

  /** The lines that have room beside the map: the last go first, never the first four. */
  List<Line> fitting(List<Line> lines) {
    List<Line> kept = new ArrayList<>(lines);
    while (kept.size() > FEWEST_LINES && beside(kept) > MAP_WITHOUT_PLOT + plotHeight / 10.0) {
      kept.remove(kept.size() - 1);
    }
    return kept;
  }

  private static double beside(List<Line> lines) {
    return 6
        + lines.stream().mapToDouble(l -> 3.6 * lines(l.label() + ": " + l.text(), 49) + 0.7).sum();
  }

  private static double refusal(Refusal refusal, boolean tight) {
    double line = tight ? 4.4 : 5.4;
    int across = tight ? 108 : 92;
    return (tight ? 20 : 24)
        + line
            * (lines("Why: " + refusal.reason(), across)
                + lines("Now: " + refusal.nextStep(), across))
        + (tight ? 4.1 : 4.5)
            * refusal.rules().stream().mapToInt(r -> lines(r, tight ? 116 : 108)).sum();
  }

  private static double cautions(SheetPage page) {
    int inTwoColumns =
        page.cautions().stream().mapToInt(c -> lines(c.topic() + ". " + c.onPaper(), 72)).sum();
    return 12
        + 3.4 * Math.ceil(inTwoColumns / 2.0)
        + 0.4 * page.cautions().size()
        + 3.4 * lines(page.rules(), 60);
  }

  private static int lines(String text, int charactersPerLine) {
    return Math.max(1, (text.length() + charactersPerLine - 1) / charactersPerLine);
  }
}
