package charline.plan;

import charline.exposure.Exposure;
import charline.trial.Patch;
import charline.trial.Reading;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleSupplier;

/**
 * The ladder rule: start low, raise one knob at a time by at most a quarter, stop at the first
 * brown (common practice, no published source). More power raises dose and intensity alike, a
 * slower hand the dose alone. So a setting may be burned if one was burned without char that has at
 * most a step less dose and at most a step less intensity.
 */
final class Ladder {
  /** From one rung to the next: a quarter more. */
  static final double LN_STEP = Math.log(1.25);

  /** Below the coolest char, where nothing but char has been seen. */
  private static final double BELOW_CHAR = 3 * LN_STEP;

  /** On a rig that has burned nothing yet: so many steps below what another rig did. */
  private static final double OTHER_RIG = 2 * LN_STEP;

  private static final double SLACK = 1e-9;

  /** A dose per pass and an intensity, as natural logarithms. */
  record Rung(double lnDose, double lnIntensity) {
    boolean permits(double otherLnDose, double otherLnIntensity) {
      return Math.max(otherLnDose - lnDose, otherLnIntensity - lnIntensity) <= LN_STEP + SLACK;
    }
  }

  private final List<Rung> known = new ArrayList<>();
  private final DoubleSupplier lnFirst;

  private Ladder(DoubleSupplier lnFirst) {
    this.lnFirst = lnFirst;
  }

  /** The ladder before any trial: nothing above its first rung. */
  static Ladder from(double lnFirstDose) {
    return new Ladder(() -> lnFirstDose);
  }

  /**
   * The ladder that trials have climbed.
   *
   * @param patches all of the stratum
   * @param own those of them that the rig in question burned
   * @param lnFirstDose first rung, asked for only where nothing was burned without char
   */
  static Ladder of(List<Patch> patches, List<Patch> own, DoubleSupplier lnFirstDose) {
    List<Rung> safe = uncharred(own.isEmpty() ? patches : own);
    if (!safe.isEmpty()) {
      return climbed(safe, own.isEmpty(), lnFirstDose);
    }
    double lowestChar =
        patches.stream()
            .filter(p -> p.lastReading().outcome().charred())
            .mapToDouble(p -> Math.log(p.exposure().doseJoulesPerCm2()))
            .min()
            .orElse(Double.POSITIVE_INFINITY);
    return from(Math.min(lnFirstDose.getAsDouble(), lowestChar - BELOW_CHAR));
  }

  private static Ladder climbed(List<Rung> safe, boolean byAnotherRig, DoubleSupplier lnFirst) {
    Ladder ladder = new Ladder(lnFirst);
    double lower = byAnotherRig ? OTHER_RIG + LN_STEP : 0;
    safe.forEach(r -> ladder.add(r.lnDose() - lower, r.lnIntensity()));
    return ladder;
  }

  private static List<Rung> uncharred(List<Patch> patches) {
    List<Rung> rungs = new ArrayList<>();
    for (Patch patch : patches) {
      if (patch.readings().stream().map(Reading::outcome).anyMatch(o -> !o.charred())) {
        Exposure exposure = patch.exposure();
        rungs.add(new Rung(Math.log(exposure.doseJoulesPerCm2()), Math.log(exposure.intensity())));
      }
    }
    return rungs;
  }

  /** Takes a setting for burned without char. */
  void add(double lnDose, double lnIntensity) {
    known.add(new Rung(lnDose, lnIntensity));
  }

  /** True if the setting is at most one step above something burned without char. */
  boolean permits(double lnDose, double lnIntensity) {
    return permits(lnDose, lnIntensity, known.size());
  }

  /** The same by the first {@code among} of what is known. */
  boolean permits(double lnDose, double lnIntensity, int among) {
    return among == 0
        ? lnDose <= lnFirst() + SLACK
        : known.stream().limit(among).anyMatch(r -> r.permits(lnDose, lnIntensity));
  }

  /** True if one setting, burned without char, permits the other. */
  static boolean within(DialSetting burned, DialSetting next) {
    return new Rung(burned.lnDose(), burned.lnIntensity())
        .permits(next.lnDose(), next.lnIntensity());
  }

  /** True if a dose is at most one step above one burned without char, whatever the intensity. */
  boolean permitsDose(double lnDose) {
    return lnDose <= lnCeiling() + SLACK;
  }

  int size() {
    return known.size();
  }

  /** First rung where nothing was burned without char, as a natural logarithm of its dose. */
  double lnFirst() {
    return lnFirst.getAsDouble();
  }

  /** Highest dose that may be burned at any intensity, as a natural logarithm. */
  double lnCeiling() {
    return known.isEmpty()
        ? lnFirst()
        : known.stream().mapToDouble(Rung::lnDose).max().getAsDouble() + LN_STEP;
  }
}
