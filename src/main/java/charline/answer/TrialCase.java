package charline.answer;

import charline.exposure.Emission;
import charline.model.Trials;
import charline.window.JobRisk;
import charline.window.Requirements;
import charline.window.RigSetup;

/**
 * A question with the trials that answer it.
 *
 * @param question what was asked
 * @param trials patches of one stratum, in the order of burning
 * @param bench rig and fixed knobs of the answer
 */
public record TrialCase(TrialQuestion question, Trials trials, RigSetup bench) {
  /** The same with other trials, as those of models that are not the newest. */
  public TrialCase with(Trials other) {
    return new TrialCase(question, other, bench);
  }

  /** What a window has to keep, with the limit of a job carried over to a patch-sized area. */
  public Requirements asked() {
    return question.asked(
        trials.medianPatchSquareCentimetres().orElse(JobRisk.USUAL_PATCH_SQUARE_CENTIMETRES));
  }

  /** Whether the light is pulsed. */
  public boolean pulsed() {
    return bench.rig().emission() == Emission.PULSED;
  }
}
