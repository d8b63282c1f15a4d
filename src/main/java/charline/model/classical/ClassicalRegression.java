package charline.model.classical;

import charline.model.Event;
import charline.model.Trials;
import charline.model.classical.ClassicalOutcome.NoClassicalFit;
import charline.model.classical.ClassicalOutcome.Separating;
import charline.refusal.Refusal;
import charline.stat.interval.ClopperPearson;
import java.util.DoubleSummaryStatistics;
import java.util.Optional;

/**
 * The passes-to-event model without priors, as logistic regression: {@code logit P(event by n
 * passes) = b0 + b1 ln D + b2 ln(F/F0) + b3 ln n}. Readings at rising passes enter exactly, as
 * {@link charline.stat.regression.BinomialSample#withBrackets brackets}. By maximum likelihood or
 * Firth all boards are one, and limits are by the profile of the (penalised) likelihood; {@link
 * Method#MIXED} adds a random intercept by board, and {@link Method#AFT} writes the same as passes
 * to the event.
 *
 * @param method the estimator
 * @param risk for char its highest chance, for clearing the highest chance of finish left; between
 *     0 and 1
 * @param confidence one-sided, above 0.5, below 1
 */
public record ClassicalRegression(Method method, double risk, double confidence) {
  /** Two-sided, of every limit but the asked one: as the posterior's intervals have it. */
  public static final double LIMITS = 0.90;

  public ClassicalRegression {
    if (!(risk > 0 && risk < 1)) {
      throw Refusal.usage("Risk must lie between 0 and 1, not " + risk + "; write 0.05 for 5 %.");
    }
    if (!(confidence > 0.5 && confidence < 1)) {
      throw Refusal.usage(
          "Confidence must lie between 0.5 and 1, not "
              + confidence
              + "; a bound that is wrong more often than right is no bound.");
    }
  }

  /** 5 % risk at 90 % confidence. */
  public static ClassicalRegression by(Method method) {
    return new ClassicalRegression(method, 0.05, 0.90);
  }

  /** The chance whose dose is asked for. */
  public double chance(Event event) {
    return event == Event.CHAR ? risk : 1 - risk;
  }

  /** Fits one event of the trials; a fit that is impossible gives its reason in words. */
  public ClassicalOutcome fit(Trials trials, Event event) {
    PatchRows rows = new PatchRows(trials, event);
    Optional<String> hopeless = hopeless(rows, event);
    if (hopeless.isPresent()) {
      return none(rows, event, Optional.empty(), hopeless.get());
    }
    Optional<Separating> separation = SeparationWords.of(rows, rows.sample(), event);
    Fitted.Attempt attempt = method.fit(rows, PatchRows.NONE);
    if (attempt.fitted().isEmpty()) {
      return none(
          rows,
          event,
          separation,
          separation.isPresent()
              ? "There is no fit by %s; ask for firth instead.".formatted(method.words())
              : attempt.reason());
    }
    try {
      return fitted(trials, event, rows, attempt.fitted().get(), separation);
    } catch (IllegalStateException lost) { // the profile has no maximum that can be found
      return none(
          rows,
          event,
          separation,
          "The limits must come from a profile, but the search for them failed; check for a patch"
              + " whose settings lie far from the rest.");
    }
  }

  private NoClassicalFit none(
      PatchRows rows, Event event, Optional<Separating> separation, String reason) {
    return new NoClassicalFit(
        event, method, counted(rows), rows.columns().notes(), separation, reason);
  }

  private Optional<String> hopeless(PatchRows rows, Event event) {
    String happened = event == Event.CHAR ? "charred" : "cleared";
    int all = rows.count();
    int events = rows.events();
    if (rows.patchCount() == 1) {
      return Optional.of(
          "A curve needs patches that %s and some that did not, but there is only one patch; burn more, at different doses."
              .formatted(happened));
    }
    if (events == 0 || events == all) {
      return Optional.of(
          "A curve needs patches that %s and some that did not, but %s; %s."
              .formatted(
                  happened,
                  (events == 0 ? "none of %d %s" : "%2$s was seen at the first reading of all %1$d")
                      .formatted(rows.patchCount(), events == 0 ? happened : event.word()),
                  constant(rows, event, events)));
    }
    if (rows.columns().names().isEmpty()) {
      return Optional.of(
          "A curve needs settings that differ, but all %d patches had the same: %d of them %s, which at those settings means a chance between %s and %s %% (%s %% confidence, Clopper-Pearson); burn some with more or less dose."
              .formatted(
                  rows.patchCount(),
                  events,
                  happened,
                  percent(new ClopperPearson(events, all).atLeast(0.5 + LIMITS / 2)),
                  percent(new ClopperPearson(events, all).atMost(0.5 + LIMITS / 2)),
                  percent(LIMITS)));
    }
    int coefficients = rows.columns().names().size() + 1;
    if (all <= coefficients) {
      return Optional.of(
          "A fit of %d coefficients needs more than %d rows, but there %s %d; burn more patches."
              .formatted(coefficients, coefficients, all == 1 ? "is" : "are", all));
    }
    return Optional.empty();
  }

  private String constant(PatchRows rows, Event event, int events) {
    ClopperPearson share =
        new ClopperPearson(events == 0 ? 0 : rows.patchCount(), rows.patchCount());
    String found =
        "patches burned like these %s in %s %s %% of cases (%s %% confidence, Clopper-Pearson)"
            .formatted(
                event == Event.CHAR ? "char" : "clear",
                events == 0 ? "at most" : "at least",
                percent(events == 0 ? share.atMost(confidence) : share.atLeast(confidence)),
                percent(confidence));
    return found + (events == 0 ? "; burn some hotter" : "; burn some with less dose");
  }

  private static String percent(double share) {
    return Columns.figure(100 * share);
  }

  private static String counted(PatchRows rows) {
    String patches = rows.patchCount() == 1 ? "1 patch" : rows.patchCount() + " patches";
    return rows.bracketCount() == 0
        ? "%s, one row each".formatted(patches)
        : "%d rows of %s: %d changed between two readings and give one row before and one after, joined"
            .formatted(rows.count(), patches, rows.bracketCount());
  }

  private ClassicalFit fitted(
      Trials trials, Event event, PatchRows rows, Fitted fit, Optional<Separating> separation) {
    DoubleSummaryStatistics doses =
        trials.patches().stream()
            .mapToDouble(p -> p.exposure().doseJoulesPerCm2())
            .summaryStatistics();
    CovariateSetting at =
        new CovariateSetting(
            rows.referencePasses(),
            Math.exp(trials.lnReferenceIntensity()),
            rows.columns().movedAlong().stream().map(SeparationWords::plain).toList(),
            doses.getMin(),
            doses.getMax());
    return new ClassicalFit(
        event,
        method,
        counted(rows),
        rows.columns().notes(),
        separation,
        fit.coefficients(),
        fit.limitsBy(),
        at,
        fit.dose(0.5, LIMITS, event),
        fit.dose(chance(event), 2 * confidence - 1, event),
        fit.boards(),
        fit.passes(Math.min(0.5, chance(event)), Math.max(0.5, chance(event))),
        ClassicalChecks.of(rows, method, fit));
  }
}
