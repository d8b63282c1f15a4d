package charline.answer;

import charline.exposure.Emission;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.ModelFit;
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
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Fits the strata of a log with what its other strata tell: always how much boards differ, and the
 * rest where a question borrows. Priors from a file are taken as they are.
 */
public final class LogFitter {
  private final Strata strata;
  private final Map<BoardSpreads.Sketch, ModelFit> sketches;
  private final Map<Boolean, BoardSpreads> spreads = new ConcurrentHashMap<>();
  private final Map<Lenders, Borrowing> lendings = new ConcurrentHashMap<>();

  private record Lenders(Priors priors, boolean acceptTint) {}

  /** Fits the strata of a log as it is now. */
  public LogFitter(Strata strata) {
    this(strata, new ConcurrentHashMap<>());
  }

  /**
   * The same where the log was fitted before.
   *
   * @param sketches fits kept from then, to which new ones are added
   */
  public LogFitter(Strata strata, Map<BoardSpreads.Sketch, ModelFit> sketches) {
    this.strata = strata;
    this.sketches = sketches;
  }

  /** What it fits. */
  public Strata strata() {
    return strata;
  }

  /**
   * A fitter for trials of a stratum.
   *
   * @param own all trials of the stratum that answer the question
   * @param borrow whether other trials of the log lend what they know
   */
  public Fitter fitter(Trials own, Priors priors, boolean borrow) {
    Fitter fitter = fitter(own.stratum(), priors, own.acceptTint());
    return borrow
        ? fitter.borrowing(
            lendings
                .computeIfAbsent(
                    new Lenders(priors, own.acceptTint()),
                    lenders -> new Borrowing(priors.fitter(), everyStratum(own.acceptTint())))
                .loansFor(own))
        : fitter;
  }

  /** The same for a stratum that may have no trials. */
  Fitter fitter(Stratum stratum, Priors priors, boolean acceptTint) {
    return priors.pinned() ? priors.fitter() : learned(acceptTint).fitterFor(stratum);
  }

  private BoardSpreads learned(boolean acceptTint) {
    return spreads.computeIfAbsent(
        acceptTint,
        accept -> new BoardSpreads(Priors.USUAL.fitter(), everyStratum(accept), sketches));
  }

  /**
   * The usual priors, moved by what all strata say of one more.
   *
   * @param kin strata that count in full
   * @throws Refusal if they say nothing
   */
  LogPriors priors(Kin kin) {
    if (strata.patches().isEmpty()) {
      throw Refusal.nothingFound(
          "The log has no patches yet, so no priors can be learned from it; record test patches"
              + " first.");
    }
    if (!LogPriors.anyNear(kin, strata)) {
      throw Refusal.nothingFound(
          "The log has no patches of that coating or on that wood; it has %s."
              .formatted(TrialChoice.inventory(strata.byStratum())));
    }
    PriorSet set = PriorSet.USUAL;
    Map<LogPriors.Line, Backing> backings = new HashMap<>();
    Map<Emission, LogPriors.Ground> grounds = new EnumMap<>(Emission.class);
    for (Emission emission : Emission.values()) {
      List<Trials> all =
          everyStratum(false).stream().filter(t -> t.stratum().emission() == emission).toList();
      if (!all.isEmpty()) {
        int usual = usualWavelength(all);
        List<Trials> alike =
            all.stream().filter(t -> t.stratum().wavelengthNanometres() == usual).toList();
        grounds.put(emission, ground(all, alike));
        Borrowing lending = new Borrowing(Priors.USUAL.fitter(), alike);
        for (Event event : Event.values()) {
          Prediction predicted = lending.prediction(event, emission, kin);
          set = set.with(event, emission, predicted.prior());
          Map.of(
                  PriorLine.DOSE, predicted.tau(),
                  PriorLine.PHI, predicted.phi(),
                  PriorLine.PSI, predicted.psi(),
                  PriorLine.SIGMA, predicted.lnSigma())
              .forEach((p, b) -> backings.put(new LogPriors.Line(p, event, emission), b));
        }
      }
    }
    for (Event event : Event.values()) {
      BoardSpreads.Learned boards = learned(false).ofAll(event);
      if (boards.backing().strata() > 0) {
        set = set.with(event, boards.spread().asLogNormal());
        for (Emission emission : Emission.values()) {
          backings.put(new LogPriors.Line(PriorLine.OMEGA, event, emission), boards.backing());
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

  private static LogPriors.Ground ground(List<Trials> all, List<Trials> alike) {
    DoubleSummaryStatistics middles =
        alike.stream().mapToDouble(t -> Math.exp(t.lnReferenceIntensity())).summaryStatistics();
    return new LogPriors.Ground(
        alike.get(0).stratum().wavelengthNanometres(),
        middles.getMin(),
        middles.getMax(),
        patches(all) - patches(alike));
  }

  private static int patches(List<Trials> all) {
    return all.stream().mapToInt(t -> t.patches().size()).sum();
  }

  /** The trials of every stratum, for the coat that most of each had. */
  private List<Trials> everyStratum(boolean acceptTint) {
    return strata.byStratum().entrySet().stream()
        .map(e -> new Trials(e.getKey(), e.getValue(), acceptTint))
        .toList();
  }
}
