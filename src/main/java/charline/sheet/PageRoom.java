package charline.sheet;

import charline.sheet.SheetPage.Refusal;

/**
 * Shares one page out. The words come first and the map takes the height they leave, so that long
 * cautions do not push the page onto a second sheet. Heights are estimates in mm for the type sizes
 * of the template.
 */
final class PageRoom {
  /** Left empty for fonts that run wider than those that the estimates are for. */
  private static final double SPARE = 3;

  private static final double HEADER = 16;
  private static final double START = 41;
  private static final double MAP_WITHOUT_PLOT = 29;
  private static final double LOWER = 38;
  private static final double FOOTER = 10;
  private static final double GAPS = 5 * 1.8;

  private static final int LOWEST = 380;
  private static final int HIGHEST = 720;

  private PageRoom() {}

  /** Height of the map's plotting area in drawing units of a tenth of a millimetre. */
  static int plotHeight(SheetPage page, Paper paper) {
    double others =
        HEADER
            + 9 * (lines(page.title(), 32) - 1)
            + page.warning().map(w -> 6 + 4.7 * lines(w, 95)).orElse(0.0)
            + page.refusal().map(PageRoom::refusal).orElse(START)
            + LOWER
            + cautions(page)
            + FOOTER
            + GAPS;
    double plot = 10 * (paper.usableMillimetres() - SPARE - others - MAP_WITHOUT_PLOT);
    return (int) Math.round(Math.max(LOWEST, Math.min(HIGHEST, plot)));
  }

  private static double refusal(Refusal refusal) {
    return 24
        + 5.4 * (lines("Why: " + refusal.reason(), 92) + lines("Now: " + refusal.nextStep(), 92))
        + 4.5 * refusal.rules().stream().mapToInt(r -> lines(r, 108)).sum();
  }

  private static double cautions(SheetPage page) {
    int inTwoColumns =
        page.cautions().stream().mapToInt(c -> lines(c.topic() + ". " + c.text(), 72)).sum();
    return 12
        + 3.4 * Math.ceil(inTwoColumns / 2.0)
        + 0.4 * page.cautions().size()
        + 3.4 * lines(page.rules(), 60);
  }

  private static int lines(String text, int charactersPerLine) {
    return Math.max(1, (text.length() + charactersPerLine - 1) / charactersPerLine);
  }
}
