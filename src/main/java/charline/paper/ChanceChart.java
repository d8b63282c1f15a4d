package charline.paper;

import charline.answer.ModelAnswer;
import charline.model.Event;
import charline.model.ModelFit;
import charline.model.Posterior;
import charline.model.Trials;
import charline.quantity.Figures;
import charline.trial.Patch;
import charline.window.Requirements;
import java.util.ArrayList;
import java.util.Collections;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;

/**
 * The chance of char or of clearing against dose as a drawing: the model's curve with the band that
 * it is sure of, and the patches as bars from above where it happened and from below where it did
 * not.
 *
 * @param passes that a patch has had
 * @param curve outline of the mean chance
 * @param band outline of the 90 % interval
 * @param doses places of round doses, J/cm² per pass
 * @param chances places of round chances
 * @param bars patches by dose
 * @param most patches of the longest bar
 * @param limit the dose up to which, or from which, the asked chance is promised
 */
public record ChanceChart(
    int passes,
    String curve,
    String band,
    List<Tick> doses,
    List<Tick> chances,
    List<Bar> bars,
    long most,
    Optional<Tick> limit) {
  /** Size of the drawing and of the plot in it. */
  public static final int WIDTH = 640;

  public static final int HEIGHT = 380;
  public static final int LEFT = 80;
  public static final int RIGHT = 624;
  public static final int TOP = 16;
  public static final int BOTTOM = 324;

  private static final int STEPS = 40;
  private static final int BINS = 24;
  private static final int TALLEST = 56;
  private static final double LOW = 0.05;

  /** Enough for a line that is two points wide. */
  private static final int DRAWS = 400;

  /** A place on an axis with what is written there. */
  public record Tick(double at, String text) {}

  /**
   * Patches of a range of doses.
   *
   * @param happened true for a bar from above
   */
  public record Bar(double x, double y, double width, double height, boolean happened) {}

  /** A patch is as it was read after these passes, or is left out. */
  private record Seen(double dose, boolean happened) {}

  /**
   * The chart of a model.
   *
   * @param passes 1 or more
   */
  public static ChanceChart of(ModelAnswer answer, int passes) {
    Trials trials = answer.subject().trials();
    ModelFit fit = answer.fit();
    DoubleSummaryStatistics tried =
        trials.patches().stream()
            .mapToDouble(p -> p.exposure().doseJoulesPerCm2())
            .summaryStatistics();
    LogAxis axis = new LogAxis(tried.getMin() / 1.5, tried.getMax() * 1.5, LEFT, RIGHT);
    Posterior posterior = fit.posterior().thinned(Math.min(DRAWS, fit.posterior().size()));
    List<String> mean = new ArrayList<>();
    List<String> upper = new ArrayList<>();
    List<String> lower = new ArrayList<>();
    for (int i = 0; i <= STEPS; i++) {
      double dose = axis.low() * Math.pow(axis.high() / axis.low(), (double) i / STEPS);
      double[] chance = posterior.newBoardChance(dose, fit.referenceIntensity(), passes);
      double x = axis.place(dose);
      mean.add(point(x, posterior.mean(chance)));
      upper.add(point(x, posterior.quantile(chance, 1 - LOW)));
      lower.add(point(x, posterior.quantile(chance, LOW)));
    }
    Collections.reverse(lower);
    List<Seen> seen = seen(trials, fit.event(), passes);
    long most = most(seen, axis);
    return new ChanceChart(
        passes,
        "M" + String.join("L", mean),
        "M" + String.join("L", upper) + "L" + String.join("L", lower) + "z",
        axis.ticks(60).stream()
            .map(dose -> new Tick(axis.place(dose), Figures.shortest(dose)))
            .toList(),
        List.of(0.0, 0.25, 0.5, 0.75, 1.0).stream()
            .map(c -> new Tick(height(c), Math.round(100 * c) + " %"))
            .toList(),
        bars(seen, axis, most),
        most,
        limit(answer, passes, axis));
  }

  private static Optional<Tick> limit(ModelAnswer answer, int passes, LogAxis axis) {
    ModelFit fit = answer.fit();
    Requirements asked = answer.subject().asked();
    boolean forChar = fit.event() == Event.CHAR;
    double dose =
        Math.exp(
            fit.lnPromisedDose(
                forChar ? asked.charRisk() : asked.clearChance(),
                asked.confidence(),
                Math.log(fit.referenceIntensity()),
                passes));
    return axis.contains(dose)
        ? Optional.of(
            new Tick(
                axis.place(dose),
                (forChar ? "up to " + Figures.threeDown(dose) : "from " + Figures.threeUp(dose))
                    + " J/cm²"))
        : Optional.empty();
  }

  private static List<Seen> seen(Trials trials, Event event, int passes) {
    List<Seen> all = new ArrayList<>();
    for (Patch patch : trials.patches()) {
      double dose = patch.exposure().doseJoulesPerCm2();
      boolean happened =
          patch.readings().stream()
              .filter(r -> r.passes() <= passes)
              .anyMatch(r -> event.shownBy(r.outcome(), trials.acceptTint()));
      boolean notYet =
          patch.readings().stream()
              .filter(r -> r.passes() >= passes)
              .anyMatch(r -> !event.shownBy(r.outcome(), trials.acceptTint()));
      if (happened || notYet) {
        all.add(new Seen(dose, happened));
      }
    }
    return all;
  }

  private static int bin(double dose, LogAxis axis) {
    double share = (axis.place(dose) - LEFT) / (RIGHT - LEFT);
    return (int) Math.min(BINS - 1, Math.max(0, Math.floor(BINS * share)));
  }

  private static long[][] counts(List<Seen> seen, LogAxis axis) {
    long[][] counts = new long[2][BINS];
    seen.forEach(s -> counts[s.happened() ? 1 : 0][bin(s.dose(), axis)]++);
    return counts;
  }

  private static long most(List<Seen> seen, LogAxis axis) {
    long most = 1;
    for (long[] side : counts(seen, axis)) {
      for (long count : side) {
        most = Math.max(most, count);
      }
    }
    return most;
  }

  private static List<Bar> bars(List<Seen> seen, LogAxis axis, long most) {
    long[][] counts = counts(seen, axis);
    double width = (double) (RIGHT - LEFT) / BINS;
    List<Bar> bars = new ArrayList<>();
    for (int side = 0; side < 2; side++) {
      for (int k = 0; k < BINS; k++) {
        if (counts[side][k] > 0) {
          double height = Math.max(4, (double) TALLEST * counts[side][k] / most);
          bars.add(
              new Bar(
                  LEFT + k * width + 2,
                  side == 1 ? TOP : BOTTOM - height,
                  width - 4,
                  height,
                  side == 1));
        }
      }
    }
    return bars;
  }

  private static double height(double chance) {
    return BOTTOM - (BOTTOM - TOP) * chance;
  }

  private static String point(double x, double chance) {
    return Figures.decimals(x, 1) + " " + Figures.decimals(height(chance), 1);
  }
}
