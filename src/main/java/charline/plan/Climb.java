package charline.plan;

import charline.window.RigSetup;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;

/** The way up to a setting that the ladder does not permit yet. */
record Climb(RigSetup bench, Ladder ladder) {
  /** Rungs are looked for this far below the setting, in ln dose. */
  private static final double DEPTH = 2;

  /**
   * The highest rung on the way that the ladder permits: at the setting's own power, or at the next
   * lower one where no hand is fast enough at it.
   */
  Optional<DialSetting> rungTowards(DialSetting goal) {
    return Stream.iterate(goal.powerPercent(), power -> power >= 1, power -> power - 1)
        .flatMap(power -> rungTowards(goal, power).stream())
        .findFirst();
  }

  private Optional<DialSetting> rungTowards(DialSetting goal, double power) {
    return new Dial(bench)
        .settings(power, goal.lnDose() - DEPTH, goal.lnDose()).stream()
            .filter(s -> ladder.permitsDose(s.lnDose()))
            .max(Comparator.comparingDouble(DialSetting::lnDose));
  }
}
