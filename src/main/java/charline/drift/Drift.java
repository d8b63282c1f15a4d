package charline.drift;

import charline.exposure.Exposure;
import charline.exposure.Settings;
import charline.model.Coating;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.Posterior;
import charline.model.Trials;
import charline.quantity.Figures;
import charline.trial.Patch;
import charline.trial.PowerCheck;
import charline.trial.Reading;
import charline.trial.Rig;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * Whether a rig still is what it was: its control patches and its power checks over time.
 *
 * @param rig the rig
 * @param watches one per control setting, then one for the power checks; only those with values
 */
public record Drift(Rig rig, List<Watch> watches) {
  /** Closer than 3 % no meter repeats (common practice, no published source). */
  private static final double METER = 0.03;

  private static final NormalDistribution STANDARD = new NormalDistribution(null, 0, 1);

  /**
   * One value over time.
   *
   * @param at when
   * @param name patch code, or the power check in words
   * @param score standard deviations towards more of what is watched, less if negative
   * @param up cumulative sum of what lies above
   * @param down cumulative sum of what lies below
   */
  public record Point(OffsetDateTime at, String name, double score, double up, double down) {}

  /**
   * One thing watched.
   *
   * @param what in words
   * @param points by time
   * @param limit sum above which the rig has drifted
   * @param since the first value after the shift, if there is one
   * @param weaker true if the shift is towards a weaker beam
   */
  public record Watch(
      String what,
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

  /** What to do about it, in a sentence; empty where there is no drift. */
  public Optional<String> advice() {
    return since()
        .map(
            since ->
                "Rig %s has drifted since %s: check the protective window, the spot and the meter, and burn a control patch before anything else."
                    .formatted(rig.name(), since.toLocalDate()));
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
   * A control patch scores by how late it cleared: the share of patches with its coat that the
   * removal model of the time up to the third control patch expects to clear sooner, as a standard
   * normal score, the middle of what the readings leave open.
   *
   * <p>Every coat is compared with its own first control patches. By how much one coat clears later
   * than another is known far less well than what one of them does, and an error in it would look
   * like drift.
   */
  private static Watch controls(Rig rig, Trials trials, Settings control, Fitter fitter) {
    Map<Coating, List<Patch>> byCoat =
        trials.patches().stream()
            .filter(p -> p.rig().id().equals(rig.id()) && p.settings().equals(control))
            .sorted(Comparator.comparing(Patch::burnedAt))
            .collect(
                Collectors.groupingBy(
                    p -> Coating.of(p.finish()), LinkedHashMap::new, Collectors.toList()));
    List<Scored> scored = new ArrayList<>();
    byCoat.forEach(
        (coat, patches) -> {
          if (patches.size() >= ControlPatch.REPEATS) {
            Posterior clearing =
                fitter.fit(reference(trials, patches, coat), Event.CLEARING).posterior();
            patches.forEach(p -> scored.add(new Scored(p, lateness(p, trials, clearing))));
          }
        });
    scored.sort(Comparator.comparing(s -> s.patch().burnedAt()));
    return watch(
        "control patches of %s: passes to clear".formatted(trials.stratum().words()),
        scored.stream().map(s -> s.patch().burnedAt()).toList(),
        scored.stream().map(s -> s.patch().code()).toList(),
        scored.stream().map(Scored::late).toList(),
        true);
  }

  /**
   * What was burned up to the third control patch of a coat: the rig as it was, not as it became.
   */
  private static Trials reference(Trials trials, List<Patch> controls, Coating coat) {
    OffsetDateTime until = controls.get(ControlPatch.REPEATS - 1).burnedAt();
    List<Patch> early =
        trials.patches().stream().filter(p -> !p.burnedAt().isAfter(until)).toList();
    return new Trials(trials.stratum(), early, trials.acceptTint(), coat);
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
    return STANDARD.inverseCumulativeProbability(middle);
  }

  private static double chance(Patch patch, int passes, Posterior clearing) {
    Exposure exposure = patch.exposure();
    return clearing.mean(
        clearing.newBoardChance(exposure.doseJoulesPerCm2(), exposure.intensity(), passes));
  }

  /** Power checks against the first, in units of what a meter repeats. */
  private static Watch checks(Rig rig) {
    List<PowerCheck> checks = rig.checks();
    double first = checks.get(0).factor(rig.ratedWatts());
    return watch(
        "power checks: metered over nominal power",
        checks.stream().map(PowerCheck::at).toList(),
        checks.stream()
            .map(
                c ->
                    "%s W at %s %%"
                        .formatted(
                            Figures.digits(c.meteredWatts(), 4), Figures.digits(c.percent(), 3)))
            .toList(),
        checks.stream().map(c -> Math.log(c.factor(rig.ratedWatts()) / first) / METER).toList(),
        false);
  }

  private static Watch watch(
      String what,
      List<OffsetDateTime> times,
      List<String> names,
      List<Double> scores,
      boolean upIsWeaker) {
    List<Cusum.Sums> sums = Cusum.USUAL.sums(scores);
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < scores.size(); i++) {
      points.add(
          new Point(
              times.get(i), names.get(i), scores.get(i), sums.get(i).up(), sums.get(i).down()));
    }
    OptionalInt signal = Cusum.USUAL.signal(sums);
    boolean up = signal.isPresent() && sums.get(signal.getAsInt()).up() > Cusum.USUAL.limit();
    return new Watch(
        what,
        points,
        Cusum.USUAL.limit(),
        signal.isPresent()
            ? Optional.of(times.get(Cusum.USUAL.since(sums, signal.getAsInt())))
            : Optional.empty(),
        up == upIsWeaker);
  }
}
