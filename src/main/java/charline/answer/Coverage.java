package charline.answer;

import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.PowerSetting;
import charline.refusal.Refusal;
import charline.trial.Patch;
import charline.trial.Stratum;
import charline.window.Box;
import charline.window.Recommendation;
import charline.window.RigSetup;
import charline.window.SpeedKnob;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Whether windows cover settings that were burned. Each window is worked out once. */
public final class Coverage {
  /** What a window says of a setting. */
  public enum Covered {
    INSIDE,
    OUTSIDE,
    /** It was burned with another spot, width or pulse than the window is for. */
    OTHER_KNOBS,
    NO_WINDOW
  }

  private record Subject(Stratum stratum, String rig) {}

  private final Answers answers;
  private final Map<Subject, Optional<Recommendation>> windows = new HashMap<>();

  public Coverage(Answers answers) {
    this.answers = answers;
  }

  /**
   * What the window for a patch's coating, wood and rig says of its setting.
   *
   * @param passes how many passes of it are meant
   */
  public Covered of(Patch patch, int passes) {
    return window(patch)
        .filter(found -> found.chosen().isPresent())
        .map(found -> covered(found, patch, passes))
        .orElse(Covered.NO_WINDOW);
  }

  private Optional<Recommendation> window(Patch patch) {
    return windows.computeIfAbsent(
        new Subject(Stratum.of(patch), patch.rig().name()),
        subject -> {
          try {
            return Optional.of(
                answers
                    .window(
                        TrialQuestion.about(subject.stratum().family(), subject.stratum().wood())
                            .onRig(subject.rig()))
                    .found());
          } catch (Refusal none) {
            return Optional.empty(); // too few patches, or the beam stays off
          }
        });
  }

  private static Covered covered(Recommendation found, Patch patch, int passes) {
    RigSetup bench = found.bench();
    boolean hand = bench.speed().kind() == SpeedKnob.Kind.HAND;
    double across;
    double speed;
    if (hand && patch.settings().form() instanceof HandPass pass) {
      across = pass.scanWidthMillimetres();
      speed = pass.handSpeedMillimetresPerSecond();
    } else if (!hand && patch.settings().form() instanceof LineScan scan) {
      across = scan.lineSpacingMillimetres();
      speed = scan.spotSpeedMillimetresPerSecond();
    } else {
      return Covered.OTHER_KNOBS;
    }
    boolean same =
        across == bench.speed().acrossMillimetres()
            && patch.settings().spot().equals(bench.spot())
            && patch.settings().pulses().equals(bench.pulses());
    if (!same) {
      return Covered.OTHER_KNOBS;
    }
    PowerSetting power = patch.settings().power();
    double percent =
        power.unit() == PowerSetting.Unit.PERCENT ? power.value() : bench.percent(power.value());
    return Stream.concat(found.chosen().stream(), found.alternatives().stream())
            .anyMatch(box -> holds(box, passes, percent, speed))
        ? Covered.INSIDE
        : Covered.OUTSIDE;
  }

  private static boolean holds(Box box, int passes, double percent, double speed) {
    return box.passes() == passes
        && box.powerPercent().contains(percent)
        && box.speedMillimetresPerSecond().contains(speed);
  }
}
