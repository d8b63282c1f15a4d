package charline.model.check;

import charline.model.Event;
import charline.model.ModelFit;
import charline.model.Prior;
import charline.model.Trials;
import charline.model.check.FitFinding.Topic;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Turns numbers into findings: what fails, what is worth a look, what is fine. */
record Diagnosis(
    FitChecks checks, Trials trials, List<ObservedPatch> watched, ModelFit fit, Prior prior) {
  List<FitFinding> findings() {
    List<FitFinding> all = new ArrayList<>();
    all.add(
        new FitFinding.Order(
            event(),
            checks.contradictions().agreeing(),
            checks.contradictions().denying(),
            checks.contradictions().decisive()));
    all.add(new FitFinding.Sampling(event(), fit.paretoK(), fit.reliable()));
    all.addAll(surprising());
    all.addAll(counts(Topic.DOSE, checks.doses()));
    all.addAll(counts(Topic.BOARD, checks.boards()));
    if (!checks.ways().isEmpty()) {
      all.addAll(counts(Topic.WAY, checks.ways()));
    }
    all.addAll(calibration());
    all.add(spread());
    checks.shifts().stream()
        .filter(BoardCheck::off)
        .forEach(board -> all.add(new FitFinding.BoardOff(board, checks.shifts().size())));
    all.addAll(new WeakIdentification(trials, watched, event()).findings());
    all.sort(Comparator.comparing(FitFinding::severity).reversed());
    return all;
  }

  private Event event() {
    return checks.event();
  }

  private List<FitFinding> surprising() {
    List<FitFinding> named = new ArrayList<>();
    for (int i = 0; i < watched.size(); i++) {
      PatchCheck check = checks.patches().get(i);
      if (check.surprising()) {
        named.add(surprise(watched.get(i), check));
      }
    }
    if (!named.isEmpty()) {
      return named;
    }
    PatchCheck least =
        checks.patches().stream().min(Comparator.comparingDouble(PatchCheck::tail)).orElseThrow();
    return List.of(
        new FitFinding.NoSurprise(
            watched.size() == 1 ? Optional.empty() : Optional.of(least.code()),
            least.tail(),
            watched.size()));
  }

  private FitFinding surprise(ObservedPatch patch, PatchCheck check) {
    boolean early = check.sooner() < check.later();
    return new FitFinding.SurprisingPatch(
        check.adjusted() < FitChecks.IMPOSSIBLE ? Severity.FAILS : Severity.LOOK,
        event(),
        patch.code(),
        early
            ? FitFinding.Surprise.EARLY
            : patch.seen() ? FitFinding.Surprise.LATE : FitFinding.Surprise.NEVER,
        patch.passes()[patch.readings() - 1],
        Math.exp(patch.lnDose()),
        check.asSeen() + (early ? check.sooner() : check.later()));
  }

  private List<FitFinding> counts(Topic topic, List<CountCheck> groups) {
    List<FitFinding> odd = new ArrayList<>();
    for (CountCheck group : groups) {
      double adjusted = group.tail() * groups.size();
      if (adjusted < FitChecks.COUNT_LOOK) {
        odd.add(new FitFinding.CountOff(severity(adjusted), topic, event(), group));
      }
    }
    return odd.isEmpty() ? List.of(new FitFinding.CountsExpected(topic)) : odd;
  }

  private List<FitFinding> calibration() {
    List<FitFinding> odd = new ArrayList<>();
    for (CalibrationBin bin : checks.calibration()) {
      double adjusted = bin.tail() * checks.calibration().size();
      if (adjusted < FitChecks.COUNT_LOOK) {
        odd.add(new FitFinding.CalibrationOff(severity(adjusted), bin));
      }
    }
    return odd.isEmpty() ? List.of(new FitFinding.Calibrated()) : odd;
  }

  private static Severity severity(double adjusted) {
    return adjusted < FitChecks.COUNT_FAILS ? Severity.FAILS : Severity.LOOK;
  }

  private FitFinding spread() {
    return new FitFinding.BoardSpread(
        Math.exp(fit.omega().median()), Math.exp(prior.omega().quantile(0.95)));
  }
}
