package charline.paper;

import charline.quantity.Figures;
import charline.trial.Patch;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Patches by dose and by what their last reading shows, as stacked bars.
 *
 * @param bars one for each dose range and outcome with patches
 * @param doses places of round doses, J/cm² per pass
 * @param most patches of the tallest stack
 * @param counts patches by outcome
 */
public record OutcomeChart(
    List<Bar> bars, List<ChanceChart.Tick> doses, long most, Map<PatchSign, Long> counts) {
  /** Size of the drawing and of the plot in it. */
  public static final int WIDTH = 640;

  public static final int HEIGHT = 168;
  public static final int LEFT = 8;
  public static final int RIGHT = 632;
  public static final int TOP = 6;
  public static final int BOTTOM = 118;

  private static final int BINS = 24;
  private static final List<PatchSign> FROM_BELOW =
      List.of(PatchSign.RESIDUE, PatchSign.TINT, PatchSign.CLEAN, PatchSign.CHAR);

  /** Patches of one dose range with one outcome. */
  public record Bar(
      double x, double y, double width, double height, PatchSign sign, long patches) {}

  /**
   * The chart of patches.
   *
   * @param patches one or more
   */
  public static OutcomeChart of(List<Patch> patches) {
    double[] doses = patches.stream().mapToDouble(p -> p.exposure().doseJoulesPerCm2()).toArray();
    DoubleSummaryStatistics tried = Arrays.stream(doses).summaryStatistics();
    LogAxis axis = new LogAxis(tried.getMin() / 1.2, tried.getMax() * 1.2, LEFT, RIGHT);
    List<Map<PatchSign, Long>> bins = new ArrayList<>();
    for (int k = 0; k < BINS; k++) {
      bins.add(new EnumMap<>(PatchSign.class));
    }
    Map<PatchSign, Long> counts = new EnumMap<>(PatchSign.class);
    for (int i = 0; i < doses.length; i++) {
      PatchSign sign = PatchSign.of(patches.get(i).lastReading().outcome());
      bins.get(bin(axis.place(doses[i]))).merge(sign, 1L, Long::sum);
      counts.merge(sign, 1L, Long::sum);
    }
    long most =
        bins.stream()
            .mapToLong(bin -> bin.values().stream().mapToLong(n -> n).sum())
            .max()
            .orElse(1);
    return new OutcomeChart(
        bars(bins, most),
        axis.ticks(70).stream()
            .map(dose -> new ChanceChart.Tick(axis.place(dose), Figures.shortest(dose)))
            .toList(),
        most,
        counts);
  }

  private static int bin(double x) {
    return (int) Math.min(BINS - 1, Math.floor(BINS * (x - LEFT) / (RIGHT - LEFT)));
  }

  private static List<Bar> bars(List<Map<PatchSign, Long>> bins, long most) {
    double width = (double) (RIGHT - LEFT) / BINS;
    List<Bar> bars = new ArrayList<>();
    for (int k = 0; k < bins.size(); k++) {
      double y = BOTTOM;
      for (PatchSign sign : FROM_BELOW) {
        long patches = bins.get(k).getOrDefault(sign, 0L);
        if (patches > 0) {
          double height = (double) (BOTTOM - TOP) * patches / most;
          y -= height;
          bars.add(new Bar(LEFT + k * width + 2, y, width - 4, height, sign, patches));
        }
      }
    }
    return bars;
  }
}
