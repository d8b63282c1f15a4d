package charline.answer;

import charline.model.Fitter;
import charline.model.Trials;
import charline.model.borrow.BoardSpreads;
import charline.model.borrow.Borrowing;
import charline.model.borrow.Kin;
import charline.refusal.Refusal;
import charline.trial.Stratum;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Fits the strata of a log with what its other strata tell: always how much boards differ, and the
 * rest where a question borrows. Priors from a file are taken as they are.
 */
public final class LogFitter {
  private final Strata strata;
  private final KeptFits kept;
  private final Map<Boolean, BoardSpreads> spreads = new ConcurrentHashMap<>();
  private final Map<Lenders, Borrowing> lendings = new ConcurrentHashMap<>();

  private record Lenders(Priors priors, boolean acceptTint) {}

  /** Fits the strata of a log as it is now. */
  public LogFitter(Strata strata) {
    this(strata, KeptFits.inMemory());
  }

  /**
   * The same where the log may have been fitted before.
   *
   * @param kept fits from then, to which new ones are added
   */
  public LogFitter(Strata strata, KeptFits kept) {
    this.strata = strata;
    this.kept = kept;
  }

  /** Fits from before. */
  KeptFits kept() {
    return kept;
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
        accept -> new BoardSpreads(Priors.USUAL.fitter(), everyStratum(accept), kept::sketch));
  }

  /**
   * The usual priors, moved by what all strata say of one more.
   *
   * @param kin strata that count in full
   * @throws Refusal if they say nothing
   */
  LogPriors priors(Kin kin) {
    return LogPriors.of(strata, everyStratum(false), learned(false), kin);
  }

  /** The trials of every stratum, for the coat that most of each had. */
  private List<Trials> everyStratum(boolean acceptTint) {
    return strata.byStratum().entrySet().stream()
        .map(e -> new Trials(e.getKey(), e.getValue(), acceptTint))
        .toList();
  }
}
