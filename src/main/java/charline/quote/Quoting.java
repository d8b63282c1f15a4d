package charline.quote;

import charline.exposure.AreaRate;
import charline.model.Estimate;
import charline.model.Posterior;
import charline.quantity.Invariant;
import charline.quote.Quote.Counts;
import charline.quote.Quote.Hours;
import charline.quote.Quote.Part;
import charline.quote.Quote.Task;
import charline.refusal.Refusal;
import charline.window.Box;
import charline.window.Recommendation;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * How a job is reckoned. Every number here is common practice without a published source, but for
 * the fire watch.
 *
 * @param areaSquareMetres area of the job, above 0
 * @param edges factor for edges and mouldings on the work itself, 1 or more
 * @param efficiency share of the time in which the beam works: low, usual, high, inside (0, 1]
 * @param minutes set-up with extraction and clean-up a day, masking a square metre, rest between
 *     two passes over the same place, a test patch, watch after the last pass of a day
 * @param hoursADay beam and handling that fit in a day
 */
public record Quoting(
    double areaSquareMetres,
    double edges,
    Hours efficiency,
    Map<Task, Hours> minutes,
    double hoursADay) {
  /** What the cautions ask for after the last pass (NFPA 51B, 2019). */
  static final double LEAST_FIRE_WATCH_MINUTES = 60;

  /** Confirming patches on a hidden spot of the piece, each judged cold. */
  public static final int TEST_PATCHES = 3;

  public Quoting {
    Invariant.positive("Area of the job", areaSquareMetres, "m2");
    Invariant.within("Factor for edges", edges, 1, 10, "times");
    Invariant.positive("Hand efficiency", 100 * efficiency.low(), "%");
    Invariant.within("Hand efficiency", 100 * efficiency.high(), 0, 100, "%");
    Invariant.positive("Hours of a day", hoursADay, "h");
    minutes = Map.copyOf(minutes);
  }

  /**
   * The usual reckoning: hand efficiency 60 % (50 to 70), an hour of set-up and clean-up a day (45
   * to 90 min), masking 10 min/m2 (5 to 20), 5 min of rest between passes (2 to 10), a fire watch
   * of an hour (NFPA 51B, 2019; up to three hours more where a scheme asks for it), six hours of
   * work a day.
   */
  public static Quoting usual(double areaSquareMetres) {
    return new Quoting(
        areaSquareMetres,
        1,
        new Hours(0.5, 0.6, 0.7),
        Map.of(
            Task.SET_UP, new Hours(45, 60, 90),
            Task.MASKING, new Hours(5, 10, 20),
            Task.COOLING, new Hours(2, 5, 10),
            Task.TEST_PATCHES, new Hours(5, 10, 15),
            Task.FIRE_WATCH, new Hours(LEAST_FIRE_WATCH_MINUTES, LEAST_FIRE_WATCH_MINUTES, 240)),
        6);
  }

  public Quoting withEdges(double factor) {
    return new Quoting(areaSquareMetres, factor, efficiency, minutes, hoursADay);
  }

  /** The same hand efficiency at either end of the range. */
  public Quoting withEfficiency(double share) {
    return new Quoting(areaSquareMetres, edges, sure(share), minutes, hoursADay);
  }

  /** So many minutes for a task at either end of the range, 0 or more. */
  public Quoting with(Task task, double known) {
    Map<Task, Hours> all = new EnumMap<>(minutes);
    all.put(task, sure(known));
    return new Quoting(areaSquareMetres, edges, efficiency, all, hoursADay);
  }

  /** Known, so the same at either end of the range. */
  private static Hours sure(double value) {
    return new Hours(value, value, value);
  }

  /**
   * The job at the start setting of a window.
   *
   * @throws Refusal if there is no window
   */
  public Quote of(Recommendation found) {
    Box box =
        found
            .chosen()
            .orElseThrow(
                () ->
                    Refusal.usage(
                        "A quote needs a window, and there is none for %s."
                            .formatted(found.stratum().words())));
    AreaRate onePass =
        new AreaRate(box.start().netAreaRateSquareCentimetresPerMinute() * box.passes() / 60);
    return of(onePass, passes(found, box));
  }

  /**
   * Fewest: every other place is clear; most: nine of ten are, at the upper end of what is known.
   */
  private static Counts passes(Recommendation found, Box box) {
    double lnDose = Math.log(box.start().doseJoulesPerCm2());
    double lnIntensity = Math.log(box.start().intensity());
    Posterior posterior = found.clearingFit().orElseThrow().posterior();
    Estimate median = posterior.doseLimit(0.5).passes(lnDose, lnIntensity);
    Estimate nearlyAll =
        posterior.doseLimit(found.asked().clearChance()).passes(lnDose, lnIntensity);
    int low = Math.max(1, Math.min(box.passes(), whole(median.median())));
    return new Counts(low, box.passes(), Math.max(box.passes(), whole(nearlyAll.high())));
  }

  private static int whole(double passes) {
    return (int) Math.min(1000, Math.ceil(passes - 1e-9));
  }

  /**
   * The job at a pace.
   *
   * @param passes whole passes over the job
   */
  Quote of(AreaRate onePass, Counts passes) {
    Hours work =
        new Hours(
                hours(onePass, passes.low(), efficiency.high()),
                hours(onePass, passes.usual(), efficiency.usual()),
                hours(onePass, passes.high(), efficiency.low()))
            .times(edges);
    Hours cooling = hours(Task.COOLING, passes.less(1));
    Counts days =
        new Counts(
            days(work.low() + cooling.low()),
            days(work.usual() + cooling.usual()),
            days(work.high() + cooling.high()));
    Hours masking = minutes.get(Task.MASKING).times(areaSquareMetres).fromMinutes();
    List<Part> parts =
        List.of(
            new Part(Task.BEAM, work),
            new Part(Task.COOLING, cooling),
            new Part(Task.TEST_PATCHES, hours(Task.TEST_PATCHES, Counts.of(TEST_PATCHES))),
            new Part(Task.SET_UP, hours(Task.SET_UP, days)),
            new Part(Task.MASKING, masking),
            new Part(Task.FIRE_WATCH, hours(Task.FIRE_WATCH, days)));
    return new Quote(areaSquareMetres, parts, new Quote.Basis(this, onePass, passes, days));
  }

  /** True if the fire watch is shorter than the cautions ask for. */
  public boolean fireWatchTooShort() {
    return minutes.get(Task.FIRE_WATCH).low() < LEAST_FIRE_WATCH_MINUTES;
  }

  private double hours(AreaRate onePass, int passes, double share) {
    return Quote.workHours(areaSquareMetres, onePass, passes, share);
  }

  private int days(double hours) {
    return (int) Math.max(1, Math.ceil(hours / hoursADay - 1e-9));
  }

  private Hours hours(Task task, Counts times) {
    return minutes.get(task).times(times).fromMinutes();
  }
}
