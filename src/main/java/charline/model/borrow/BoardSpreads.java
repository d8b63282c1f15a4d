package charline.model.borrow;

import charline.model.Event;
import charline.model.Fitter;
import charline.model.LearnedSpread;
import charline.model.ModelFit;
import charline.model.PriorSet;
import charline.model.Trials;
import charline.trial.Stratum;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
  private final Sketches sketches;
  private final Map<Stratum, PriorSet> learned = new ConcurrentHashMap<>();

  /** What other strata say of boards, each from a fit with few draws; may be kept from before. */
  @FunctionalInterface
  public interface Sketches {
    /**
     * What one event of a stratum says of boards; empty where its fit failed.
     *
     * @param fitter has the usual priors
     */
    Optional<LearnedSpread.Evidence> of(Fitter fitter, Trials trials, Event event);
  }

  /**
   * @param fitter fits the other strata, from the usual priors
   * @param log trials of every stratum of the log
   */
  public BoardSpreads(Fitter fitter, List<Trials> log) {
    this(fitter, log, BoardSpreads::sketch);
  }

  /**
   * @param sketches what is known of them
   */
  public BoardSpreads(Fitter fitter, List<Trials> log, Sketches sketches) {
    this.fitter = fitter;
    Map<Asked, Optional<LearnedSpread.Evidence>> once = new ConcurrentHashMap<>();
    this.sketches =
        (by, trials, event) ->
            once.computeIfAbsent(new Asked(trials, event), a -> sketches.of(by, trials, event));
    this.log =
        log.stream()
            .map(trials -> new Counted(trials, trials.evidence().boards()))
            .filter(counted -> counted.boards() >= FEWEST_BOARDS)
            .sorted(Counted::mostBoardsFirst)
            .map(Counted::trials)
            .toList();
  }

  private record Counted(Trials trials, int boards) {
    int patches() {
      return trials.patches().size();
    }

    static int mostBoardsFirst(Counted one, Counted other) {
      return one.boards != other.boards
          ? other.boards - one.boards
          : one.patches() != other.patches()
              ? other.patches() - one.patches()
              : one.trials.stratum().words().compareTo(other.trials.stratum().words());
    }
  }

  private record Asked(Trials trials, Event event) {}

  /** What one event of a stratum says of boards, fitted now. */
  public static Optional<LearnedSpread.Evidence> sketch(Fitter fitter, Trials trials, Event event) {
    ModelFit fit = fitter.forGist().fit(trials, event);
    return fit.reliable()
        ? Optional.of(LearnedSpread.OF_EMPTY_LOG.evidence(fit, fitter.prior(trials, event).omega()))
        : Optional.empty();
  }

  /** A fitter for the trials of a stratum that knows what the others say of boards. */
  public Fitter fitterFor(Stratum wanted) {
    PriorSet priors = learned.get(wanted);
    if (priors == null) {
      priors = learn(wanted); // outside of the map, as threads that wait for it may come back here
      learned.put(wanted, priors);
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
    return learn(log, List.of(event)).get(event);
  }

  private PriorSet learn(Stratum wanted) {
    PriorSet priors = fitter.priors();
    List<Trials> others =
        log.stream().filter(other -> !Borrowing.within(other.stratum(), wanted)).toList();
    for (Map.Entry<Event, Learned> each : learn(others, List.of(Event.values())).entrySet()) {
      priors = priors.with(each.getKey(), each.getValue().spread());
    }
    return priors;
  }

  /** Strata are heard in their order, though fitted on as many threads as there are. */
  private Map<Event, Learned> learn(List<Trials> all, List<Event> events) {
    record Heard(Trials trials, Event event, Optional<LearnedSpread.Evidence> evidence) {}
    List<Heard> heard =
        all.stream()
            .limit(MOST_STRATA)
            .flatMap(trials -> events.stream().map(event -> new Asked(trials, event)))
            .toList()
            .parallelStream()
            .map(a -> new Heard(a.trials(), a.event(), sketches.of(fitter, a.trials(), a.event())))
            .toList();
    Map<Event, Learned> found = new EnumMap<>(Event.class);
    events.forEach(
        event ->
            found.put(event, new Learned(LearnedSpread.OF_EMPTY_LOG, Prediction.Backing.NONE)));
    for (Heard each : heard) {
      each.evidence()
          .ifPresent(
              evidence ->
                  found.computeIfPresent(
                      each.event(),
                      (event, known) ->
                          new Learned(
                              known.spread().after(evidence),
                              known.backing().plus(each.trials().patches().size()))));
    }
    return found;
  }
}
