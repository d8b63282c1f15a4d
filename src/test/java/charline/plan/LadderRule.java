package charline.plan;

import charline.trial.Patch;
import java.util.List;

/** The ladder rule, written down a second time so that the planner's own cannot hide a fault. */
final class LadderRule {
  private LadderRule() {}

  /**
   * True if any patch lies more than a quarter above the highest dose burned before without char.
   */
  static boolean broken(List<Patch> patches) {
    double highest = Double.NaN;
    for (Patch patch : patches) {
      double dose = patch.exposure().doseJoulesPerCm2();
      if (dose > 1.25 * highest * (1 + 1e-9)) {
        return true;
      }
      if (!patch.readings().get(0).outcome().charred()) {
        highest = Double.isNaN(highest) ? dose : Math.max(highest, dose);
      }
    }
    return false;
  }
}
