package charline.drift;

import charline.exposure.Exposure;
import charline.exposure.PowerCurve;
import charline.exposure.Settings;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.Posterior;
import charline.model.Trials;
import charline.stat.distribution.StandardNormal;
import charline.trial.Patch;
import charline.trial.PowerCheck;
import charline.trial.Reading;
import charline.trial.Rig;
import charline.trial.Stratum;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Whether a rig still is what it was: its control patches and its power checks over time.
 *
 * @param rig the rig
 * @param watches one per control setting, then one for the power checks; only those with values
 */
public record Drift(Rig rig, List<Watch> watches) {
  /** Closer than 3 % no meter repeats (common practice, no published source). */
  private static final double METER = 0.03;

  /**
   * One value over time.
   *
   * @param at when
   * @param patch code of the control patch; empty for a power check
   * @param check the power check; empty for a control patch
   * @param score standard deviations towards more of what is watched, less if negative
   * @param run how many times the rig had been kept up before
   * @param up cumulative sum of what lies above in that run
   * @param down cumulative sum of what lies below in it
   */
  public record Point(
      OffsetDateTime at,
      Optional<String> patch,
      Optional<PowerCheck> check,
      double score,
      int run,
      double up,
      double down) {}

  /** What is watched. */
  public sealed interface Gauge {}

  /** Control patches of a stratum and a manner, by the passes that they take to clear. */
  public record ControlPatches(Stratum stratum) implements Gauge {}

  /** Power checks: metered over nominal power. */
  public record PowerChecks() implements Gauge {}

  /**
   * That a rig has drifted.
   *
   * @param rig its name
   * @param since the first value after the shift
   */
  public record Shift(String rig, OffsetDateTime since) {}

  /**
   * One thing watched.
   *
   * @param gauge what it is
   * @param points by time
   * @param limit sum above which the rig has drifted
   * @param since the first value after the shift, if there is one
   * @param weaker true if the shift is towards a weaker beam
   */
  public record Watch(
      Gauge gauge,
      List<Point> points,
      double limit,
      Optional<OffsetDateTime> since,
      boolean weaker) {
    public Watch {
      points = List.copyOf(points);
    }
  }

  public Drift {
    watches = List.copyOf(watches);
  }

  /** The earliest shift of all. */
  public Optional<OffsetDateTime> since() {
    return watches.stream().flatMap(w -> w.since().stream()).min(Comparator.naturalOrder());
  }

  /** The earliest shift, with its rig; empty where there is no drift. */
  public Optional<Shift> shift() {
    return since().map(since -> new Shift(rig.name(), since));
  }

  /** True if some of these patches were burned on the rig before it drifted. */
  public boolean outdates(List<Patch> patches) {
    return since()
        .filter(
            since ->
                patches.stream()
                    .anyMatch(p -> p.rig().id().equals(rig.id()) && p.burnedAt().isBefore(since)))
        .isPresent();
  }

  /**
   * What control patches and power checks say of a rig.
   *
   * @param strata trials of one or more strata, each in the order of burning
   * @param fitter fits what a control patch is expected to do
   */
  public static Drift of(Rig rig, List<Trials> strata, Fitter fitter) {
    List<Watch> watches = new ArrayList<>();
    for (Trials trials : strata) {
      ControlPatch.setting(trials.patches(), rig)
          .map(control -> controls(rig, trials, control, fitter))
          .ifPresent(watches::add);
    }
    if (!rig.checks().isEmpty()) {
      watches.add(checks(rig));
    }
    return new Drift(rig, watches);
  }

  /** A control patch with its score. */
  private record Scored(Patch patch, double late) {}

  /**
   * A control patch scores by how late it cleared: the share of patches of its kind that the
   * removal model of the time up to the third control patch expects to clear sooner, as a standard
   * normal score, the middle of what the readings leave open.
   *
   * <p>Like is compared with like: every coat, burned with one figure on one place, with its own
   * first control patches. By how much one coat clears later than another is known far less well
   * than what one of them does, and an error in it would look like drift.
   */
  private static Watch controls(Rig rig, Trials trials, Settings control, Fitter fitter) {
    Map<ControlPatch.Kind, List<Patch>> byKind =
        trials.patches().stream()
            .filter(p -> p.rig().id().equals(rig.id()) && p.settings().equals(control))
            .sorted(Comparator.comparing(Patch::burnedAt))
            .collect(
                Collectors.groupingBy(
                    ControlPatch.Kind::of, LinkedHashMap::new, Collectors.toList()));
    List<Scored> scored = new ArrayList<>();
    byKind.forEach(
        (kind, patches) -> {
          if (patches.size() >= ControlPatch.REPEATS) {
            Posterior clearing =
                fitter.fit(reference(trials, patches, kind), Event.CLEARING).posterior();
            patches.forEach(p -> scored.add(new Scored(p, lateness(p, trials, clearing))));
          }
        });
    scored.sort(Comparator.comparing(s -> s.patch().burnedAt()));
    return watch(
        rig,
        new ControlPatches(trials.stratum()),
        scored.stream()
            .map(
                s ->
                    new Value(
                        s.patch().burnedAt(), Optional.of(s.patch().code()), Optional.empty()))
            .toList(),
        scored.stream().map(Scored::late).toList(),
        true);
  }

  /**
   * What was burned up to the third control patch of a kind, with its figure on its place: the rig
   * as it was, not as it became.
   */
  private static Trials reference(Trials trials, List<Patch> controls, ControlPatch.Kind kind) {
    OffsetDateTime until = controls.get(ControlPatch.REPEATS - 1).burnedAt();
    List<Patch> early =
        trials.patches().stream()
            .filter(p -> !p.burnedAt().isAfter(until) && p.manner().equals(kind.manner()))
            .toList();
    return new Trials(trials.stratum(), early, trials.acceptTint(), kind.way());
  }

  private static double lateness(Patch patch, Trials trials, Posterior clearing) {
    double before = 0;
    double by = 1;
    for (Reading reading : patch.readings()) {
      double chance = chance(patch, reading.passes(), clearing);
      if (Event.CLEARING.shownBy(reading.outcome(), trials.acceptTint())) {
        by = chance;
        break;
      }
      before = chance;
    }
    double middle = Math.max(0.001, Math.min(0.999, (before + Math.max(before, by)) / 2));
    return StandardNormal.quantile(middle);
  }

  private static double chance(Patch patch, int passes, Posterior clearing) {
    Exposure exposure = patch.exposure();
    return clearing.mean(
        clearing.newBoardChance(exposure.doseJoulesPerCm2(), exposure.intensity(), passes));
  }

  /**
   * Power checks against the first ones, in units of what a meter repeats; one value a day, the
   * mean over its checks. A check is compared with earlier ones at the same pulses, where they say
   * something of its setting: a source that is turned down gives less than its share, and that is
   * no drift. A check without such a forerunner begins a comparison.
   */
  private static Watch checks(Rig rig) {
    Map<LocalDate, List<PowerCheck>> byDay =
        rig.checks().stream()
            .collect(
                Collectors.groupingBy(
                    c -> c.at().toLocalDate(), TreeMap::new, Collectors.toList()));
    List<PowerCheck> first = new ArrayList<>();
    List<Value> values = new ArrayList<>();
    List<Double> scores = new ArrayList<>();
    for (List<PowerCheck> day : byDay.values()) {
      List<PowerCheck> before = List.copyOf(first);
      List<Double> changes = new ArrayList<>();
      for (PowerCheck check : lastOfEachSetting(day)) {
        Optional<PowerCurve> then = firstCurve(rig, check, before);
        then.map(curve -> Math.log(check.meteredWatts() / curve.watts(check.percent())) / METER)
            .ifPresentOrElse(changes::add, () -> first.add(check));
      }
      PowerCheck last = day.get(day.size() - 1);
      values.add(new Value(last.at(), Optional.empty(), Optional.of(last)));
      scores.add(changes.stream().mapToDouble(c -> c).average().orElse(0));
    }
    return watch(rig, new PowerChecks(), values, scores, false);
  }

  private static List<PowerCheck> lastOfEachSetting(List<PowerCheck> day) {
    Map<List<Object>, PowerCheck> last = new LinkedHashMap<>();
    day.forEach(
        c -> last.put(List.of(c.percent(), c.repetitionKilohertz(), c.pulseNanoseconds()), c));
    return List.copyOf(last.values());
  }

  /** What the first checks at the pulses of this one say of its setting, if anything. */
  private static Optional<PowerCurve> firstCurve(
      Rig rig, PowerCheck check, List<PowerCheck> first) {
    List<PowerCheck> alike =
        first.stream()
            .filter(
                c ->
                    rig.repetitionOf(c).equals(rig.repetitionOf(check))
                        && rig.pulseOf(c).equals(rig.pulseOf(check)))
            .toList();
    return alike.isEmpty()
        ? Optional.empty()
        : Optional.of(PowerCheck.curve(alike)).filter(curve -> curve.covers(check.percent()));
  }

  /** What a score is of. */
  private record Value(OffsetDateTime at, Optional<String> patch, Optional<PowerCheck> check) {}

  /**
   * Upkeep begins a new run: the sums start again, still against the first values, so that a rig
   * that is not what it was is found out. A shift before the last upkeep is over.
   */
  private static Watch watch(
      Rig rig, Gauge gauge, List<Value> values, List<Double> scores, boolean upIsWeaker) {
    List<Integer> runs = values.stream().map(v -> run(rig, v.at())).toList();
    List<Cusum.Sums> sums = Cusum.USUAL.sums(scores, runs);
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < scores.size(); i++) {
      points.add(
          new Point(
              values.get(i).at(),
              values.get(i).patch(),
              values.get(i).check(),
              scores.get(i),
              runs.get(i),
              sums.get(i).up(),
              sums.get(i).down()));
    }
    int last = runs.indexOf(rig.upkeep().size());
    List<Cusum.Sums> now = last < 0 ? List.of() : sums.subList(last, sums.size());
    OptionalInt signal = Cusum.USUAL.signal(now);
    boolean up = signal.isPresent() && now.get(signal.getAsInt()).up() > Cusum.USUAL.limit();
    return new Watch(
        gauge,
        points,
        Cusum.USUAL.limit(),
        signal.isPresent()
            ? Optional.of(values.get(last + Cusum.USUAL.since(now, signal.getAsInt())).at())
            : Optional.empty(),
        up == upIsWeaker);
  }

  private static int run(Rig rig, OffsetDateTime at) {
    return (int) rig.upkeep().stream().filter(upkeep -> !upkeep.at().isAfter(at)).count();
  }
}
