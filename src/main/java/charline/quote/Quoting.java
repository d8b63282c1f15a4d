package charline.quote;

import charline.exposure.AreaRate;
import charline.model.Estimate;
import charline.model.Posterior;
import charline.quantity.Figures;
import charline.quantity.Invariant;
import charline.refusal.Refusal;
import charline.window.Box;
import charline.window.CharredSpots;
import charline.window.Recommendation;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How a job is worked out. Every usual number here is common practice without a published source,
 * but for the fire watch.
 *
 * @param areaSquareMetres area of the job, above 0
 * @param edges factor for edges and mouldings on the work itself, 1 or more
 * @param efficiency share of the time in which the beam works: low, usual, high, inside (0, 1]
 * @param minutes times of the tasks, each for what {@link Task#per()} says
 * @param hoursADay all hours of a day, set-up and fire watch included
 * @param contingency share of the work that is added for what nobody foresees, 0 to 1
 * @param secondPerson share of the hours on site that a second person is there, 0 to 1
 * @param lead what is known of lead; empty where the log decides
 */
public record Quoting(
    double areaSquareMetres,
    double edges,
    Span efficiency,
    Map<Task, Span> minutes,
    double hoursADay,
    double contingency,
    double secondPerson,
    Optional<Lead> lead) {
  /** What the cautions ask for after the last pass (NFPA 51B, 2019). */
  static final double LEAST_FIRE_WATCH_MINUTES = 60;

  /** Confirming patches on a hidden spot of the piece, each judged cold. */
  public static final int TEST_PATCHES = 3;

  /** Less of a day than this is no time to work in. */
  private static final double LEAST_WORK_HOURS = 0.5;

  public Quoting {
    Invariant.positive("Area of the job", areaSquareMetres, "m2");
    Invariant.within("Factor for edges", edges, 1, 10, "times");
    Invariant.positive("Hand efficiency", 100 * efficiency.low(), "%");
    Invariant.within("Hand efficiency", 100 * efficiency.high(), 0, 100, "%");
    Invariant.within("Hours of a day", hoursADay, 1, 24, "h");
    Invariant.within("Contingency", 100 * contingency, 0, 100, "%");
    Invariant.within("Share of a second person", 100 * secondPerson, 0, 100, "%");
    minutes = Map.copyOf(minutes);
  }

  /**
   * The usual estimate: hand efficiency 60 % (50 to 70), an hour of set-up and clean-up a day (45
   * to 90 min), 15 min a day for waste and filters (10 to 30), masking 10 min/m2 (5 to 20), 5 min
   * of rest between passes (2 to 10), 10 min to put a charred spot right (5 to 20), sanding after
   * 15 min/m2 (10 to 30), four hours of containment (2 to 8) and three of clearance (2 to 6) where
   * lead may be, a fire watch of an hour (60 to 120 min; NFPA 51B, 2019, has one hour, and where a
   * scheme asks for up to four, a person knows and says so), a tenth of the work for what nobody
   * foresees, eight hours a day, one person.
   */
  public static Quoting usual(double areaSquareMetres) {
    Map<Task, Span> minutes = new EnumMap<>(Task.class);
    minutes.put(Task.COOLING, new Span(2, 5, 10));
    minutes.put(Task.REWORK, new Span(5, 10, 20));
    minutes.put(Task.TEST_PATCHES, new Span(5, 10, 15));
    minutes.put(Task.MASKING, new Span(5, 10, 20));
    minutes.put(Task.SANDING, new Span(10, 15, 30));
    minutes.put(Task.CONTAINMENT, new Span(120, 240, 480));
    minutes.put(Task.CLEARANCE, new Span(120, 180, 360));
    minutes.put(Task.SET_UP, new Span(45, 60, 90));
    minutes.put(Task.WASTE, new Span(10, 15, 30));
    minutes.put(Task.FIRE_WATCH, new Span(LEAST_FIRE_WATCH_MINUTES, LEAST_FIRE_WATCH_MINUTES, 120));
    return new Quoting(
        areaSquareMetres, 1, new Span(0.5, 0.6, 0.7), minutes, 8, 0.1, 0, Optional.empty());
  }

  public Quoting withEdges(double factor) {
    return new Quoting(
        areaSquareMetres, factor, efficiency, minutes, hoursADay, contingency, secondPerson, lead);
  }

  /** The same hand efficiency at either end of the range. */
  public Quoting withEfficiency(double share) {
    return new Quoting(
        areaSquareMetres,
        edges,
        Span.sure(share),
        minutes,
        hoursADay,
        contingency,
        secondPerson,
        lead);
  }

  /** So many minutes for a task at either end of the range, 0 or more. */
  public Quoting with(Task task, double known) {
    Map<Task, Span> all = new EnumMap<>(minutes);
    all.put(task, Span.sure(known));
    return new Quoting(
        areaSquareMetres, edges, efficiency, all, hoursADay, contingency, secondPerson, lead);
  }

  public Quoting withHoursADay(double hours) {
    return new Quoting(
        areaSquareMetres, edges, efficiency, minutes, hours, contingency, secondPerson, lead);
  }

  public Quoting withContingency(double share) {
    return new Quoting(
        areaSquareMetres, edges, efficiency, minutes, hoursADay, share, secondPerson, lead);
  }

  public Quoting withSecondPerson(double share) {
    return new Quoting(
        areaSquareMetres, edges, efficiency, minutes, hoursADay, contingency, share, lead);
  }

  public Quoting with(Lead known) {
    return new Quoting(
        areaSquareMetres,
        edges,
        efficiency,
        minutes,
        hoursADay,
        contingency,
        secondPerson,
        Optional.of(known));
  }

  /**
   * The job at the start setting of a window.
   *
   * @throws Refusal if there is no window
   */
  public Quote of(Recommendation found) {
    return of(found, passes(found));
  }

  /**
   * The same where the passes were worked out already.
   *
   * @param passes by {@link #passes}
   */
  public Quote of(Recommendation found, Counts passes) {
    Box box = box(found);
    AreaRate onePass =
        new AreaRate(box.start().netAreaRateSquareCentimetresPerMinute() * box.passes() / 60);
    CharredSpots spots = found.charredSpots(box.start());
    return of(
        onePass,
        passes,
        new Span(0, spots.mean(), Math.max(spots.mean(), spots.upper())).times(areaSquareMetres));
  }

  private static Box box(Recommendation found) {
    return found
        .chosen()
        .orElseThrow(
            () ->
                Refusal.usage(
                    "A quote needs a window, and there is none for %s."
                        .formatted(found.stratum().words())));
  }

  /**
   * Passes at the start setting of a window. Fewest: every other place is clear; most: nine of ten
   * are, at the upper end of what is known.
   *
   * @throws Refusal if there is no window
   */
  public static Counts passes(Recommendation found) {
    Box box = box(found);
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
   * @param spots charred spots that are expected on it
   */
  Quote of(AreaRate onePass, Counts passes, Span spots) {
    Map<Task, Span> once = new EnumMap<>(Task.class);
    once.put(
        Task.BEAM,
        new Span(
                hours(onePass, passes.low(), efficiency.high()),
                hours(onePass, passes.usual(), efficiency.usual()),
                hours(onePass, passes.high(), efficiency.low()))
            .times(edges));
    once.put(Task.COOLING, time(Task.COOLING).times(passes.less(1)));
    once.put(Task.REWORK, time(Task.REWORK).times(spots));
    once.put(Task.TEST_PATCHES, time(Task.TEST_PATCHES).times(TEST_PATCHES));
    once.put(Task.MASKING, time(Task.MASKING).times(areaSquareMetres));
    once.put(Task.SANDING, time(Task.SANDING).times(areaSquareMetres));
    if (lead.orElse(Lead.FREE).contained()) {
      once.put(Task.CONTAINMENT, time(Task.CONTAINMENT));
      once.put(Task.CLEARANCE, time(Task.CLEARANCE));
    }
    once.put(Task.CONTINGENCY, sum(once).times(contingency));

    Map<Task, Span> daily = new EnumMap<>(Task.class);
    for (Task task : Task.values()) {
      if (task.per() == Task.Per.DAY) {
        daily.put(task, time(task));
      }
    }
    Counts days = days(sum(once), sum(daily));
    List<Quote.Part> parts = new ArrayList<>();
    once.forEach((task, hours) -> parts.add(new Quote.Part(task, hours.rounded())));
    daily.forEach((task, hours) -> parts.add(new Quote.Part(task, hours.times(days).rounded())));
    Quote alone =
        new Quote(
            areaSquareMetres,
            parts,
            Optional.empty(),
            new Quote.Basis(this, onePass, passes, spots, days));
    return secondPerson == 0
        ? alone
        : new Quote(
            areaSquareMetres,
            parts,
            Optional.of(alone.onSite().times(secondPerson).rounded()),
            alone.basis());
  }

  /** As many days as hold all of the work, beside what every day takes for itself. */
  private Counts days(Span work, Span daily) {
    if (hoursADay - daily.high() < LEAST_WORK_HOURS) {
      throw Refusal.usage(
          "A day of %s h has no time for the work: set-up, waste and fire watch alone take up to %s h. Make the day longer, or name shorter times for them."
              .formatted(Figures.shortest(hoursADay), Figures.threeUp(daily.high())));
    }
    return new Counts(
        days(work.low(), daily.low()),
        days(work.usual(), daily.usual()),
        days(work.high(), daily.high()));
  }

  private int days(double work, double daily) {
    return (int) Math.max(1, Math.ceil(work / (hoursADay - daily) - 1e-9));
  }

  private static Span sum(Map<Task, Span> hours) {
    return hours.values().stream().reduce(Span.NONE, Span::plus);
  }

  /** True if the fire watch is shorter than the cautions ask for. */
  public boolean fireWatchTooShort() {
    return minutes.get(Task.FIRE_WATCH).low() < LEAST_FIRE_WATCH_MINUTES;
  }

  private double hours(AreaRate onePass, int passes, double share) {
    return Quote.workHours(areaSquareMetres, onePass, passes, share);
  }

  private Span time(Task task) {
    return minutes.get(task).fromMinutes();
  }
}
