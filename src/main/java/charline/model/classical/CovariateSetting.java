package charline.model.classical;

import java.util.List;

/**
 * Where a dose is read off.
 *
 * @param passes passes made; 1, or what all trials had, or their middle where passes moved along
 * @param intensity F0 in J/cm² or W/cm²
 * @param movedAlong knobs left out because they moved with the others: the dose takes them along
 * @param lowestDose of the trials, J/cm² per pass
 * @param highestDose of the trials, J/cm² per pass
 */
public record CovariateSetting(
    int passes, double intensity, List<String> movedAlong, double lowestDose, double highestDose) {
  public CovariateSetting {
    movedAlong = List.copyOf(movedAlong);
  }
}
