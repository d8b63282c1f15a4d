package charline.paper;

import charline.answer.CompareAnswer;
import charline.answer.CompareAnswer.Contender;
import charline.compare.Side;
import charline.model.ModelFit;
import charline.quantity.Figures;
import charline.trial.Patch;
import charline.window.Requirements;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Both windows on one map: the doses that clear and do not char, by number of passes. Lengths are
 * drawing units of a tenth of a millimetre at full size.
 *
 * @param height of the whole drawing
 * @param rows a row for each number of passes
 * @param ticks round doses
 */
public record RoomPicture(long height, List<Row> rows, List<MapPicture.Tick> ticks) {
  /** Width of the whole drawing. */
  public static final int WIDTH = 1180;

  /** Where the dose axis begins. */
  public static final int LEFT = 150;

  /** Where it ends. */
  public static final int RIGHT = 1150;

  /** Height of the bars' area above which nothing is drawn. */
  public static final int TOP = 70;

  private static final int ROW = 96;
  private static final int BAR = 32;
  private static final int BELOW = 110;
  private static final int MOST_PASSES = 6;
  private static final double AIR = 1.25;
  private static final double LEAST_APART = 70;

  /**
   * One number of passes.
   *
   * @param y middle of the row
   * @param passes how many
   * @param compared whether the two were compared at it
   * @param bars of the first way, then of the second
   */
  public record Row(long y, String passes, boolean compared, List<Bar> bars) {}

  /**
   * The doses of one way.
   *
   * @param style "first" or "second"
   * @param y upper edge
   * @param from where doses begin that clear, middle estimate
   * @param to where those end that do not char; before {@code from} where there is no room
   * @param sureFrom the same with the asked confidence
   * @param sureTo the same with the asked confidence
   * @param title in words
   */
  public record Bar(
      String style, long y, long from, long to, long sureFrom, long sureTo, String title) {
    /** Height of the bar of what is sure. */
    public int height() {
      return BAR;
    }

    /** Whether any dose clears and does not char, by the middle estimate. */
    public boolean room() {
      return to > from;
    }

    /** Whether any dose does so with the asked confidence. */
    public boolean sure() {
      return sureTo > sureFrom;
    }

    /** Middle of its height. */
    public long middle() {
      return y + BAR / 2;
    }
  }

  /** Doses in J/cm² of one way at one number of passes. */
  private record Doses(double from, double to, double sureFrom, double sureTo) {
    Stream<Double> all() {
      return Stream.of(from, to, sureFrom, sureTo);
    }
  }

  /** The picture of a comparison. */
  static RoomPicture of(CompareAnswer answer) {
    int most = mostPasses(answer);
    List<List<Doses>> doses =
        Stream.of(answer.first(), answer.second())
            .map(c -> IntStream.rangeClosed(1, most).mapToObj(n -> doses(c, n)).toList())
            .toList();
    List<Double> all = doses.stream().flatMap(List::stream).flatMap(Doses::all).sorted().toList();
    LogAxis axis = new LogAxis(all.get(0) / AIR, all.get(all.size() - 1) * AIR, LEFT, RIGHT);
    List<Row> rows = new ArrayList<>();
    for (int n = 1; n <= most; n++) {
      long y = TOP + (long) ROW * (n - 1) + ROW / 2;
      rows.add(
          new Row(
              y,
              String.valueOf(n),
              n == answer.first().side().passes() || n == answer.second().side().passes(),
              List.of(
                  bar("first", y - BAR - 4, doses.get(0).get(n - 1), axis),
                  bar("second", y + 4, doses.get(1).get(n - 1), axis))));
    }
    List<MapPicture.Tick> ticks =
        axis.ticks(LEAST_APART).stream()
            .map(tick -> new MapPicture.Tick(Math.round(axis.place(tick)), Figures.plain(tick)))
            .toList();
    return new RoomPicture(TOP + (long) ROW * most + BELOW, rows, ticks);
  }

  private static int mostPasses(CompareAnswer answer) {
    int tried =
        Stream.of(answer.first(), answer.second())
            .flatMap(c -> c.side().trials().patches().stream())
            .mapToInt((Patch patch) -> patch.lastReading().passes())
            .max()
            .orElse(1);
    return Math.max(
        Math.min(tried, MOST_PASSES),
        Math.max(answer.first().side().passes(), answer.second().side().passes()));
  }

  private static Doses doses(Contender of, int passes) {
    Requirements asked = of.subject().asked();
    return new Doses(
        dose(of.side(), of.side().clearing(), asked.clearChance(), 0.5, passes),
        dose(of.side(), of.side().charring(), asked.charRisk(), 0.5, passes),
        dose(of.side(), of.side().clearing(), asked.clearChance(), asked.confidence(), passes),
        dose(of.side(), of.side().charring(), asked.charRisk(), asked.confidence(), passes));
  }

  private static double dose(
      Side side, ModelFit fit, double chance, double confidence, int passes) {
    return Math.exp(fit.lnPromisedDose(chance, confidence, side.lnIntensity(), passes));
  }

  private static Bar bar(String style, long y, Doses doses, LogAxis axis) {
    return new Bar(
        style,
        y,
        Math.round(axis.place(doses.from())),
        Math.round(axis.place(doses.to())),
        Math.round(axis.place(doses.sureFrom())),
        Math.round(axis.place(doses.sureTo())),
        doses.sureTo() > doses.sureFrom()
            ? Figures.inward(doses.sureFrom(), doses.sureTo()) + " J/cm²"
            : "no dose is sure to clear and not to char");
  }

  /** Where the axis lies. */
  public long axisY() {
    return height - BELOW;
  }
}
