package charline.model.check;

import static charline.model.check.FitWords.count;
import static charline.model.check.FitWords.done;
import static charline.model.check.FitWords.passes;
import static charline.model.check.FitWords.patches;
import static charline.model.check.FitWords.percent;
import static charline.model.check.FitWords.three;

import charline.model.Event;
import charline.model.ModelFit;
import charline.model.Prior;
import charline.model.Trials;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.apache.commons.math3.distribution.NormalDistribution;

/** Turns numbers into findings: what fails, what is worth a look, what is fine. */
record FindingWords(
    FitChecks checks, Trials trials, List<Watched> watched, ModelFit fit, Prior prior) {

  static final String PATCH = "patch";

  List<FitFinding> all() {
    List<FitFinding> all = new ArrayList<>();
    all.add(order());
    all.add(sampling());
    all.addAll(surprising());
    all.addAll(counts("dose", checks.doses()));
    all.addAll(counts("board", checks.boards()));
    all.addAll(calibration());
    all.add(spread());
    all.addAll(standingOff());
    all.addAll(new Untold(trials, watched, checks.event()).findings());
    all.sort(Comparator.comparing(FitFinding::severity).reversed());
    return all;
  }

  private Event event() {
    return checks.event();
  }

  private FitFinding order() {
    int agreeing = checks.contradictions().agreeing();
    int denying = checks.contradictions().denying();
    if (checks.contradictions().decisive()) {
      return new FitFinding(
          Severity.FAILS,
          "order",
          "Cooler patches %s sooner than hotter ones in %d comparisons, the other way round in only %d."
              .formatted(done(event()), denying, agreeing));
    }
    return new FitFinding(
        Severity.FINE,
        "order",
        "Of patches that were hotter in every respect, %d %s sooner and %d later than the cooler one."
            .formatted(agreeing, done(event()), denying));
  }

  private FitFinding sampling() {
    String kHat =
        Double.isInfinite(fit.paretoK()) && fit.paretoK() > 0
            ? "infinite"
            : String.format(Locale.ROOT, "%.2f", Math.max(0, fit.paretoK()));
    return fit.reliable()
        ? new FitFinding(
            Severity.FINE,
            "sampling",
            "The posterior could be computed: Pareto k-hat %s, good up to 0.7.".formatted(kHat))
        : new FitFinding(
            Severity.FAILS,
            "sampling",
            "The %s model could not be computed well enough (Pareto k-hat %s, must be at most 0.7)."
                .formatted(FitWords.model(event()), kHat));
  }

  private List<FitFinding> surprising() {
    List<FitFinding> named = new ArrayList<>();
    for (int i = 0; i < watched.size(); i++) {
      PatchCheck check = checks.patches().get(i);
      if (check.surprising()) {
        named.add(
            new FitFinding(
                check.adjusted() < FitChecks.IMPOSSIBLE ? Severity.FAILS : Severity.LOOK,
                PATCH,
                surprise(watched.get(i), check)));
      }
    }
    if (!named.isEmpty()) {
      return named;
    }
    PatchCheck least =
        checks.patches().stream().min(Comparator.comparingDouble(PatchCheck::tail)).orElseThrow();
    return List.of(
        new FitFinding(
            Severity.FINE,
            PATCH,
            watched.size() == 1
                ? "One patch cannot surprise a model that has seen no other."
                : "No patch surprises the model fitted to the others; the least expected is %s (tail %s, over %s)."
                    .formatted(least.code(), percent(least.tail()), patches(watched.size()))));
  }

  private String surprise(Watched patch, PatchCheck check) {
    boolean early = check.sooner() < check.later();
    int last = patch.passes()[patch.readings() - 1];
    String seen =
        early
            ? "%s %s within %s".formatted(patch.code(), done(event()), passes(last))
            : patch.seen()
                ? "%s %s only after %s".formatted(patch.code(), done(event()), passes(last))
                : "%s had not %s after %s".formatted(patch.code(), done(event()), passes(last));
    double chance = check.asSeen() + (early ? check.sooner() : check.later());
    return "%s of %s J/cm2, to which the model fitted to the other patches gives a chance of %s."
        .formatted(seen, three(Math.exp(patch.lnDose())), percent(chance));
  }

  private List<FitFinding> counts(String about, List<CountCheck> groups) {
    List<FitFinding> odd = new ArrayList<>();
    for (CountCheck group : groups) {
      double adjusted = group.tail() * groups.size();
      if (adjusted < FitChecks.COUNT_LOOK) {
        odd.add(
            new FitFinding(
                adjusted < FitChecks.COUNT_FAILS ? Severity.FAILS : Severity.LOOK,
                about,
                "At %s, %d of %d readings %s where the model expects %s (%d to %d)."
                    .formatted(
                        group.group(),
                        group.seen(),
                        group.readings(),
                        event() == Event.CHAR ? "found char" : "found it cleared",
                        count(group.expected()),
                        group.low(),
                        group.high())));
      }
    }
    return odd.isEmpty()
        ? List.of(
            new FitFinding(
                Severity.FINE, about, "Counts by %s are as the model expects.".formatted(about)))
        : odd;
  }

  private List<FitFinding> calibration() {
    List<FitFinding> odd = new ArrayList<>();
    List<CalibrationBin> bins = checks.calibration();
    for (CalibrationBin bin : bins) {
      double adjusted = bin.tail() * bins.size();
      if (adjusted < FitChecks.COUNT_LOOK) {
        odd.add(
            new FitFinding(
                adjusted < FitChecks.COUNT_FAILS ? Severity.FAILS : Severity.LOOK,
                "calibration",
                "Where chances averaged %s, %d of %d readings showed it: a true share of %s to %s, with 90 %% confidence."
                    .formatted(
                        percent(bin.predicted()),
                        bin.seen(),
                        bin.readings(),
                        percent(bin.low()),
                        percent(bin.high()))));
      }
    }
    return odd.isEmpty()
        ? List.of(
            new FitFinding(
                Severity.FINE, "calibration", "Chances given and what was seen go together."))
        : odd;
  }

  private FitFinding spread() {
    NormalDistribution normal = new NormalDistribution(null, 0, 1);
    double usual = prior.omegaScale() * normal.inverseCumulativeProbability(0.975);
    boolean wide = fit.omega().median() > usual;
    return new FitFinding(
        wide ? Severity.LOOK : Severity.FINE,
        "board spread",
        wide
            ? "Boards differ by a factor of %s from the average, more than the prior allows for (up to %s in 19 of 20 cases), so it holds the spread down; burn on more boards, or split what differs."
                .formatted(three(Math.exp(fit.omega().median())), three(Math.exp(usual)))
            : "Boards differ by a factor of %s from the average; the prior allows for up to %s in 19 of 20 cases."
                .formatted(three(Math.exp(fit.omega().median())), three(Math.exp(usual))));
  }

  private List<FitFinding> standingOff() {
    return checks.shifts().stream()
        .filter(BoardCheck::off)
        .flatMap(
            b ->
                Stream.of(
                    new FitFinding(
                        Severity.LOOK,
                        "board",
                        "Board %s takes %s times the dose of an average board (%s), further off than the prior expects of any of %d boards; see whether it is the same wood and finish."
                            .formatted(
                                b.board(),
                                three(b.factor().median()),
                                FitWords.range(b.factor().low(), b.factor().high()),
                                checks.shifts().size()))))
        .toList();
  }
}
