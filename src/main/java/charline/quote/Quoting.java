package charline.quote;

import charline.exposure.AreaRate;
import charline.model.Estimate;
import charline.model.Posterior;
import charline.quantity.Invariant;
import charline.quote.Quote.Hours;
import charline.quote.Quote.Part;
import charline.quote.Quote.Task;
import charline.refusal.Refusal;
import charline.window.Box;
import charline.window.Recommendation;
import java.util.List;

/**
 * How a job is reckoned. Every number here is common practice without a published source, but for
 * the fire watch.
 *
 * @param areaSquareMetres area of the job, above 0
 * @param edges factor for edges and mouldings on the work itself, 1 or more
 * @param efficiency share of the time in which the beam works: low, usual, high, inside (0, 1]
 * @param setUpMinutes set-up, extraction and clean-up of a day
 * @param maskingMinutesPerSquareMetre masking
 * @param coolingMinutes rest between two passes over the same place
 * @param fireWatchMinutes watch after the last pass of a day
 * @param hoursADay beam and handling that fit in a day
 */
public record Quoting(
    double areaSquareMetres,
    double edges,
    Hours efficiency,
    Hours setUpMinutes,
    Hours maskingMinutesPerSquareMetre,
    Hours coolingMinutes,
    Hours fireWatchMinutes,
    double hoursADay) {
  /** What the cautions ask for after the last pass (NFPA 51B, 2019). */
  static final double LEAST_FIRE_WATCH_MINUTES = 60;

  /** Confirming patches on a hidden spot of the piece, each judged cold. */
  public static final int TEST_PATCHES = 3;

  private static final Hours TEST_PATCH_MINUTES = new Hours(5, 10, 15);

  public Quoting {
    Invariant.positive("Area of the job", areaSquareMetres, "m2");
    Invariant.within("Factor for edges", edges, 1, 10, "times");
    Invariant.positive("Hand efficiency", 100 * efficiency.low(), "%");
    Invariant.within("Hand efficiency", 100 * efficiency.high(), 0, 100, "%");
    Invariant.positive("Hours of a day", hoursADay, "h");
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
        new Hours(45, 60, 90),
        new Hours(5, 10, 20),
        new Hours(2, 5, 10),
        new Hours(LEAST_FIRE_WATCH_MINUTES, LEAST_FIRE_WATCH_MINUTES, 240),
        6);
  }

  public Quoting withEdges(double factor) {
    return new Quoting(
        areaSquareMetres,
        factor,
        efficiency,
        setUpMinutes,
        maskingMinutesPerSquareMetre,
        coolingMinutes,
        fireWatchMinutes,
        hoursADay);
  }

  /** The same hand efficiency at either end of the range. */
  public Quoting withEfficiency(double share) {
    return new Quoting(
        areaSquareMetres,
        edges,
        sure(share),
        setUpMinutes,
        maskingMinutesPerSquareMetre,
        coolingMinutes,
        fireWatchMinutes,
        hoursADay);
  }

  /** So much set-up and clean-up a day, 0 or more. */
  public Quoting withSetUp(double minutes) {
    return new Quoting(
        areaSquareMetres,
        edges,
        efficiency,
        sure(minutes),
        maskingMinutesPerSquareMetre,
        coolingMinutes,
        fireWatchMinutes,
        hoursADay);
  }

  /** So much masking a square metre, 0 or more. */
  public Quoting withMasking(double minutes) {
    return new Quoting(
        areaSquareMetres,
        edges,
        efficiency,
        setUpMinutes,
        sure(minutes),
        coolingMinutes,
        fireWatchMinutes,
        hoursADay);
  }

  /** So much rest between two passes over the same place, 0 or more. */
  public Quoting withCooling(double minutes) {
    return new Quoting(
        areaSquareMetres,
        edges,
        efficiency,
        setUpMinutes,
        maskingMinutesPerSquareMetre,
        sure(minutes),
        fireWatchMinutes,
        hoursADay);
  }

  /** So long a fire watch each day, 0 or more; the quote says so where it is below an hour. */
  public Quoting withFireWatch(double minutes) {
    return new Quoting(
        areaSquareMetres,
        edges,
        efficiency,
        setUpMinutes,
        maskingMinutesPerSquareMetre,
        coolingMinutes,
        sure(minutes),
        hoursADay);
  }

  /** Known, so the same at either end of the range. */
  private static Hours sure(double value) {
    return new Hours(value, value, value);
  }

  /** Whole passes over the job: where all goes well, as the window has it, where it does not. */
  public record Passes(int low, int usual, int high) {}

  /** Days with the beam at work, each with its set-up and fire watch. */
  public record Days(int low, int usual, int high) {}

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
  private static Passes passes(Recommendation found, Box box) {
    double lnDose = Math.log(box.start().doseJoulesPerCm2());
    double lnIntensity = Math.log(box.start().intensity());
    Posterior posterior = found.clearingFit().orElseThrow().posterior();
    Estimate median = posterior.doseLimit(0.5).passes(lnDose, lnIntensity);
    Estimate nearlyAll =
        posterior.doseLimit(found.asked().clearChance()).passes(lnDose, lnIntensity);
    int low = Math.max(1, Math.min(box.passes(), whole(median.median())));
    return new Passes(low, box.passes(), Math.max(box.passes(), whole(nearlyAll.high())));
  }

  private static int whole(double passes) {
    return (int) Math.min(1000, Math.ceil(passes - 1e-9));
  }

  Quote of(AreaRate onePass, Passes passes) {
    Hours work =
        new Hours(
                hours(onePass, passes.low(), efficiency.high()),
                hours(onePass, passes.usual(), efficiency.usual()),
                hours(onePass, passes.high(), efficiency.low()))
            .times(edges);
    Hours cooling =
        Hours.minutes(
            coolingMinutes.low() * (passes.low() - 1),
            coolingMinutes.usual() * (passes.usual() - 1),
            coolingMinutes.high() * (passes.high() - 1));
    Days days =
        new Days(
            days(work.low() + cooling.low()),
            days(work.usual() + cooling.usual()),
            days(work.high() + cooling.high()));
    List<Part> parts =
        List.of(
            new Part(Task.BEAM, work),
            new Part(Task.COOLING, cooling),
            new Part(
                Task.TEST_PATCHES,
                Hours.minutes(
                    TEST_PATCHES * TEST_PATCH_MINUTES.low(),
                    TEST_PATCHES * TEST_PATCH_MINUTES.usual(),
                    TEST_PATCHES * TEST_PATCH_MINUTES.high())),
            new Part(Task.SET_UP, daily(setUpMinutes, days)),
            new Part(
                Task.MASKING,
                Hours.minutes(
                    maskingMinutesPerSquareMetre.low() * areaSquareMetres,
                    maskingMinutesPerSquareMetre.usual() * areaSquareMetres,
                    maskingMinutesPerSquareMetre.high() * areaSquareMetres)),
            new Part(Task.FIRE_WATCH, daily(fireWatchMinutes, days)));
    return new Quote(areaSquareMetres, parts, new Quote.Basis(this, onePass, passes, days));
  }

  /** True if the fire watch is shorter than the cautions ask for. */
  public boolean fireWatchTooShort() {
    return fireWatchMinutes.low() < LEAST_FIRE_WATCH_MINUTES;
  }

  private double hours(AreaRate onePass, int passes, double share) {
    return Quote.workHours(areaSquareMetres, onePass, passes, share);
  }

  private int days(double hours) {
    return (int) Math.max(1, Math.ceil(hours / hoursADay - 1e-9));
  }

  private static Hours daily(Hours minutes, Days days) {
    return Hours.minutes(
        minutes.low() * days.low(), minutes.usual() * days.usual(), minutes.high() * days.high());
  }
}
