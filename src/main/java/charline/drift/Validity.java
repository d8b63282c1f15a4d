package charline.drift;

import charline.model.Fitter;
import charline.model.Trials;
import charline.trial.Caution;
import charline.trial.Patch;
import charline.trial.Rig;
import java.util.List;
import java.util.Optional;

/**
 * Whether a window may be used: not where the rig has drifted since it was burned, and only with
 * confirming patches where the rig has burned none of the trials (common practice, no published
 * source).
 *
 * @param drifted what to do about a drift, in sentences; empty where none outdates the trials
 * @param untried true if the rig has burned none of the trials
 */
public record Validity(Optional<String> drifted, boolean untried) {
  /** Where the rules of this class come from, as a caution names it. */
  public static final String SOURCE = "common practice, no published source";

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
        drift
            .advice()
            .filter(advice -> drift.outdates(patches))
            .map(advice -> advice + " Trials from before do not speak for the rig as it is."),
        patches.stream().noneMatch(p -> p.rig().id().equals(rig.id())));
  }

  /** A drift as the caution that stands before all others; empty where there is none. */
  public Optional<Caution> notValid() {
    return drifted.map(why -> new Caution("Not valid", why, SOURCE));
  }
}
