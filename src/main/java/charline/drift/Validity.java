package charline.drift;

import charline.model.Fitter;
import charline.model.Trials;
import charline.trial.Patch;
import charline.trial.Rig;
import java.util.List;
import java.util.Optional;

/**
 * Whether a window may be used: not where the rig has drifted since it was burned, and only with
 * confirming patches where the rig has burned none of the trials (common practice, no published
 * source).
 *
 * @param drifted a drift that outdates the trials; empty where there is none
 * @param untried true if the rig has burned none of the trials
 */
public record Validity(Optional<Drift.Shift> drifted, boolean untried) {
  /**
   * Whether the window of some trials may be used on a rig. Costs a fit where the rig has control
   * patches among the trials.
   *
   * @param rig with all its power checks up to now
   * @param trials in the order of burning
   * @param fitter fits what a control patch is expected to do
   */
  public static Validity of(Rig rig, Trials trials, Fitter fitter) {
    List<Patch> patches = trials.patches();
    Drift drift = Drift.of(rig, List.of(trials), fitter);
    return new Validity(
        drift.shift().filter(shift -> drift.outdates(patches)),
        patches.stream().noneMatch(p -> p.rig().id().equals(rig.id())));
  }
}
