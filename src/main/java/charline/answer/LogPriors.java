package charline.answer;

import charline.exposure.Emission;
import charline.log.Logbook;
import charline.model.Event;
import charline.model.PriorSet;
import charline.model.Trials;
import charline.model.borrow.BoardSpreads;
import charline.model.borrow.Borrowing;
import charline.model.borrow.Kin;
import charline.model.borrow.Prediction;
import charline.model.borrow.Prediction.Backing;
import charline.quantity.Figures;
import charline.refusal.Refusal;
import charline.trial.Stratum;
import java.util.DoubleSummaryStatistics;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

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

  /**
   * The usual priors, moved by what all strata say of one more.
   *
   * @param all trials of every stratum
   * @param spreads what they say of boards
   * @param kin strata that count in full
   * @throws Refusal if they say nothing
   */
  static LogPriors of(Strata strata, List<Trials> all, BoardSpreads spreads, Kin kin) {
    if (strata.patches().isEmpty()) {
      throw Refusal.nothingFound(
          "The log has no patches yet, so no priors can be learned from it; record test patches"
              + " first.");
    }
    if (!anyNear(kin, strata)) {
      throw Refusal.nothingFound(
          "The log has no patches of that coating or on that wood; it has %s."
              .formatted(TrialChoice.inventory(strata.byStratum())));
    }
    PriorSet set = PriorSet.USUAL;
    Map<Line, Backing> backings = new HashMap<>();
    Map<Emission, Ground> grounds = new EnumMap<>(Emission.class);
    for (Emission emission : Emission.values()) {
      List<Trials> lit = all.stream().filter(t -> t.stratum().emission() == emission).toList();
      if (!lit.isEmpty()) {
        int usual = usualWavelength(lit);
        List<Trials> alike =
            lit.stream().filter(t -> t.stratum().wavelengthNanometres() == usual).toList();
        grounds.put(emission, ground(lit, alike));
        Borrowing lending = new Borrowing(Priors.USUAL.fitter(), alike);
        for (Event event : Event.values()) {
          Prediction predicted = lending.prediction(event, emission, kin);
          set = set.with(event, emission, predicted.prior());
          Map.of(
                  PriorLine.DOSE, predicted.tau(),
                  PriorLine.PHI, predicted.phi(),
                  PriorLine.PSI, predicted.psi(),
                  PriorLine.SIGMA, predicted.lnSigma())
              .forEach((p, b) -> backings.put(new Line(p, event, emission), b));
        }
      }
    }
    for (Event event : Event.values()) {
      BoardSpreads.Learned boards = spreads.ofAll(event);
      if (boards.backing().strata() > 0) {
        set = set.with(event, boards.spread().asLogNormal());
        for (Emission emission : Emission.values()) {
          backings.put(new Line(PriorLine.OMEGA, event, emission), boards.backing());
        }
      }
    }
    backings.values().removeIf(Backing.NONE::equals);
    if (backings.isEmpty()) {
      throw Refusal.nothingFound(
          "No priors can be learned from the log's %s yet; it takes 3 of one coating and wood that charred or cleared, or 2 boards."
              .formatted(Figures.count(strata.patches().size(), "patch", "patches")));
    }
    return new LogPriors(set, backings, grounds);
  }

  /** The wavelength that most patches had; the longer of equal ones. */
  private static int usualWavelength(List<Trials> all) {
    Map<Integer, Integer> patches = new TreeMap<>();
    all.forEach(
        t -> patches.merge(t.stratum().wavelengthNanometres(), t.patches().size(), Integer::sum));
    return patches.entrySet().stream()
        .max(
            Map.Entry.<Integer, Integer>comparingByValue()
                .thenComparing(Map.Entry.comparingByKey()))
        .orElseThrow()
        .getKey();
  }

  private static Ground ground(List<Trials> all, List<Trials> alike) {
    DoubleSummaryStatistics middles =
        alike.stream().mapToDouble(t -> Math.exp(t.lnReferenceIntensity())).summaryStatistics();
    return new Ground(
        alike.get(0).stratum().wavelengthNanometres(),
        middles.getMin(),
        middles.getMax(),
        patches(all) - patches(alike));
  }

  private static int patches(List<Trials> all) {
    return all.stream().mapToInt(t -> t.patches().size()).sum();
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
    try {
      return new Kin(Optional.of(log.reference().family(all)), List.of());
    } catch (Refusal notAFamily) {
      if (words.size() == 1) {
        throw notAFamily;
      }
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
