package charline.model.check;

import charline.model.Contradictions;
import charline.model.Draw;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.ModelFit;
import charline.model.SampleSize;
import charline.model.Trials;
import charline.model.way.Way;
import charline.trial.Board;
import charline.trial.Patch;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * Checks a fitted model against its trials. The same trials and fit give the same digits.
 *
 * @param fitter fitted the model, and fits it anew where a patch left out moves it too far
 */
public record FitChecker(Fitter fitter) {
  /** Of the posterior's draws: tails need no more, and a window stays quick. */
  private static final int USUAL_DRAWS = 2000;

  /** All checks of one event. */
  public FitChecks check(Trials trials, ModelFit fit) {
    Event event = fit.event();
    List<ObservedPatch> patches = ObservedPatch.all(trials, event);
    int count = SampleSize.of(trials).draws(USUAL_DRAWS);
    List<Draw> draws = fit.posterior().alike(count);
    List<String> boardNames = boardNames(trials);
    PatchPredictions replay = new PatchPredictions(patches, draws, fitter.seed());
    List<LeftOut> leftOut = LeftOut.all(patches, replay, fitter, trials, event, count);
    FitChecks checks =
        new FitChecks(
            event,
            List.of(),
            LeftOut.checks(leftOut),
            CountCheck.byDose(patches, replay, count),
            CountCheck.byBoard(boardNames, patches, replay, count),
            CountCheck.byWay(
                fit.ways(),
                trials.patches().stream().map(Way::of).toList(),
                patches,
                replay,
                count),
            CalibrationBin.of(leftOut),
            BoardCheck.of(
                boardNames, replay, draws, fitter.prior(trials, event).omega().rootMeanSquare()),
            Contradictions.in(trials, event),
            leftOut.stream().mapToDouble(LeftOut::logDensity).sum());
    return checks.with(
        new Diagnosis(checks, trials, patches, fit, fitter.prior(trials, event)).findings());
  }

  private static List<String> boardNames(Trials trials) {
    Map<UUID, String> names = new LinkedHashMap<>();
    for (Patch patch : trials.patches()) {
      Board board = patch.board();
      names.putIfAbsent(board.id(), board.name());
    }
    return List.copyOf(names.values());
  }
}
