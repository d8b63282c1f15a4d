package charline.plan;

import charline.model.Contradictions;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.ModelFit;
import charline.model.Trials;
import charline.model.check.FitChecks;
import charline.window.CheckedModels;
import java.util.List;
import java.util.Optional;

/**
 * Models whose checks, a third of the time of an answer, were left out: for simulations that look
 * after every patch. A window or none found so counts only once the checked models agree.
 */
final class Unchecked {
  private Unchecked() {}

  static CheckedModels models(Fitter fitter, Trials trials) {
    return with(trials, fitter.fit(trials, Event.CHAR), fitter.fit(trials, Event.CLEARING));
  }

  private static CheckedModels with(Trials trials, ModelFit charring, ModelFit clearing) {
    return new CheckedModels(
        trials,
        charring,
        clearing,
        nothingAmiss(Event.CHAR),
        nothingAmiss(Event.CLEARING),
        Optional.empty());
  }

  private static FitChecks nothingAmiss(Event event) {
    return new FitChecks(
        event,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        new Contradictions(0, 0, 1),
        0);
  }
}
