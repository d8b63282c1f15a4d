package charline.compare;

import charline.model.ModelFit;
import charline.model.Trials;
import charline.trial.Patch;
import java.util.List;

/**
 * One of two ways that are compared.
 *
 * @param trials the patches behind its models
 * @param charring the burn-onset model, for this way
 * @param clearing the removal model, for this way
 * @param passes number of passes it is compared at
 * @param lnIntensity natural logarithm of the intensity it is compared at
 */
public record Side(
    Trials trials, ModelFit charring, ModelFit clearing, int passes, double lnIntensity) {
  /** How many of the trials were made in this way. */
  public int ownPatches() {
    return (int) trials.patches().stream().filter(this::made).count();
  }

  /** Whether a patch was made in this way, as far as that goes by name. */
  boolean made(Patch patch) {
    return trials.with(List.of(patch)).tried(trials.asked());
  }

  /** False where one of its models could not be computed. */
  boolean reliable() {
    return charring.reliable() && clearing.reliable();
  }
}
