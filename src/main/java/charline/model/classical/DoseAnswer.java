package charline.model.classical;

import charline.model.Event;
import java.util.OptionalDouble;

/**
 * The dose per pass at which the event has a given chance.
 *
 * @param chance of the event
 * @param doseJoulesPerCm2 the estimate; 0 or infinite where the curve is all but level
 * @param limits two-sided, by the profile, or Fieller's where a method has none
 * @param rising whether the fitted chance rises with dose
 * @param bound the limit on the careful side: the lower one for char, the upper one for clearing;
 *     empty where there is none, or where the chance falls with dose
 */
public record DoseAnswer(
    double chance, double doseJoulesPerCm2, Limits limits, boolean rising, OptionalDouble bound) {
  static DoseAnswer of(double chance, double lnDose, Limits limits, boolean rising, Event event) {
    OptionalDouble careful = event == Event.CHAR ? limits.low() : limits.high();
    return new DoseAnswer(
        chance, Math.exp(lnDose), limits, rising, rising ? careful : OptionalDouble.empty());
  }
}
