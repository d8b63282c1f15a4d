package charline.model.borrow;

import charline.model.Event;
import charline.model.Fitter;
import charline.model.LearnedSpread;
import charline.model.ModelFit;
import charline.model.PriorSet;
import charline.model.Trials;
import charline.trial.Stratum;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * What a log says of the spread between boards in one of its strata: all others, under any light,
 * tell the level that strata have in common. Char and clearing have a level each.
 *
 * <p>Each other stratum is fitted with few draws, and its chance under every level is the mean over
 * its draws of what that level's prior is to the one it was fitted under.
 */
public final class BoardSpreads {
  /** A dozen strata tell the level as well as it can be used, and a fit of each costs time. */
  static final int MOST_STRATA = 12;

  /** One board shows nothing of how boards differ. */
  private static final int FEWEST_BOARDS = 2;

  private final Fitter fitter;
  private final List<Trials> log;
  private final Map<Key, LearnedSpread> learned = new ConcurrentHashMap<>();
  private final Map<Sketch, ModelFit> sketches;

  private record Key(Stratum stratum, Event event) {}

  /** A stratum's trials and event, of which fits are kept. */
  public record Sketch(Trials trials, Event event) {}

  /**
   * @param fitter fits the other strata, from the usual priors
   * @param log trials of every stratum of the log
   */
  public BoardSpreads(Fitter fitter, List<Trials> log) {
    this(fitter, log, new ConcurrentHashMap<>());
  }

  /**
   * @param sketches fits made before, to which new ones are added
   */
  public BoardSpreads(Fitter fitter, List<Trials> log, Map<Sketch, ModelFit> sketches) {
    this.fitter = fitter;
    this.sketches = sketches;
    this.log =
        log.stream()
            .filter(trials -> trials.evidence().boards() >= FEWEST_BOARDS)
            .sorted(
                Comparator.comparingInt((Trials trials) -> trials.evidence().boards())
                    .thenComparing(trials -> trials.patches().size())
                    .reversed()
                    .thenComparing(trials -> trials.stratum().words()))
            .toList();
  }

  /** A fitter for the trials of a stratum that knows what the others say of boards. */
  public Fitter fitterFor(Stratum wanted) {
    PriorSet priors = fitter.priors();
    for (Event event : Event.values()) {
      priors = priors.with(event, learned.computeIfAbsent(new Key(wanted, event), this::learn));
    }
    return fitter.with(priors);
  }

  /**
   * What all strata of the log say of boards in one more.
   *
   * @param spread the prior of it
   * @param backing what it rests on
   */
  public record Learned(LearnedSpread spread, Prediction.Backing backing) {}

  /** What all strata of the log say of boards in one more. */
  public Learned ofAll(Event event) {
    return learn(log, event);
  }

  private LearnedSpread learn(Key key) {
    return learn(
            log.stream()
                .filter(other -> !Borrowing.within(other.stratum(), key.stratum()))
                .toList(),
            key.event())
        .spread();
  }

  private Learned learn(List<Trials> others, Event event) {
    LearnedSpread level = LearnedSpread.OF_EMPTY_LOG;
    Prediction.Backing backing = Prediction.Backing.NONE;
    for (Trials other : others.subList(0, Math.min(MOST_STRATA, others.size()))) {
      ModelFit fit =
          sketches.computeIfAbsent(
              new Sketch(other, event), s -> fitter.sketch(s.trials(), s.event()));
      if (fit.reliable()) {
        level = level.after(fit, fitter.prior(other, event).omega());
        backing = backing.plus(other.patches().size());
      }
    }
    return new Learned(level, backing);
  }
}
