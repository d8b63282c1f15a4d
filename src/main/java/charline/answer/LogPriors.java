package charline.answer;

import charline.exposure.Emission;
import charline.log.Logbook;
import charline.model.Event;
import charline.model.PriorSet;
import charline.model.borrow.Kin;
import charline.model.borrow.Prediction.Backing;
import charline.refusal.Refusal;
import charline.trial.Stratum;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The usual priors, moved by what the strata of a log say of one more stratum. It holds no name
 * that the log gives to anything.
 *
 * @param set the priors
 * @param backings what each number rests on; the usual ones are not named
 * @param grounds what was burned under each kind of light; a kind that was not is left out
 */
public record LogPriors(PriorSet set, Map<Line, Backing> backings, Map<Emission, Ground> grounds) {
  /** One number of the priors. */
  public record Line(PriorLine parameter, Event event, Emission emission) {}

  /**
   * What the numbers of one kind of light come from.
   *
   * @param wavelengthNanometres wavelength that most patches had; no others count
   * @param leastIntensity lowest middle intensity of a stratum, in J/cm² or W/cm²
   * @param mostIntensity highest of them
   * @param otherPatches how many were left out as they had another wavelength
   */
  public record Ground(
      int wavelengthNanometres, double leastIntensity, double mostIntensity, int otherPatches) {}

  public LogPriors {
    backings = Map.copyOf(backings);
    grounds = Map.copyOf(grounds);
  }

  /** What a number rests on; {@link Backing#NONE} where it is the usual one. */
  public Backing backing(PriorLine parameter, Event event, Emission emission) {
    return backings.getOrDefault(new Line(parameter, event, emission), Backing.NONE);
  }

  /** The priors by themselves. */
  public Priors priors() {
    return new Priors(set, Optional.empty());
  }

  /**
   * Reads which trials are to count in full: {@code latex}, {@code latex pine}, or nothing.
   *
   * @throws Refusal naming the word that the log does not know, with the nearest
   */
  public static Kin kin(List<String> words, Logbook log) {
    if (words.isEmpty()) {
      return Kin.EVERYBODY;
    }
    String all = String.join(" ", words);
    if (words.size() == 1) {
      return new Kin(Optional.of(log.reference().family(all)), List.of());
    }
    try {
      return new Kin(Optional.of(log.reference().family(all)), List.of());
    } catch (Refusal notAFamily) {
      FamilyAndWood both = FamilyAndWood.read(words, log);
      return new Kin(Optional.of(both.family()), both.woods());
    }
  }

  /** Whether any stratum is near. */
  static boolean anyNear(Kin kin, Strata strata) {
    return strata.byStratum().keySet().stream()
        .anyMatch((Stratum s) -> kin.includes(s, Event.CHAR));
  }
}
