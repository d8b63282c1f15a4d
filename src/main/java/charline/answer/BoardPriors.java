package charline.answer;

import charline.model.Event;
import charline.model.Fitter;
import charline.model.SpreadPrior;
import charline.model.Trials;

/**
 * What is taken for likely of the spread between boards before a stratum's own patches.
 *
 * @param charring for char
 * @param clearing for clearing
 * @param pinned whether a file says so, and nothing was learned from the log
 */
public record BoardPriors(SpreadPrior charring, SpreadPrior clearing, boolean pinned) {
  static BoardPriors of(Fitter fitter, Trials trials, boolean pinned) {
    return new BoardPriors(
        fitter.prior(trials, Event.CHAR).omega(),
        fitter.prior(trials, Event.CLEARING).omega(),
        pinned);
  }

  /** That of one event. */
  public SpreadPrior of(Event event) {
    return event == Event.CHAR ? charring : clearing;
  }
}
