package charline.wording;

import charline.answer.ClassicalAnswer;
import charline.answer.TrialCase;
import charline.exposure.Emission;
import charline.model.Event;
import charline.model.classical.ClassicalChecks;
import charline.model.classical.ClassicalFit;
import charline.model.classical.ClassicalOutcome;
import charline.model.classical.ClassicalOutcome.NoClassicalFit;
import charline.model.classical.ClassicalRegression;
import charline.model.classical.Coefficient;
import charline.model.classical.Comparison;
import charline.model.classical.DoseAnswer;
import charline.model.classical.Limits;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The classical view as JSON; an open limit is null. */
public final class ClassicalJson {
  private ClassicalJson() {}

  public static Json of(ClassicalAnswer answer) {
    return of(answer.subject(), answer.outcome(), answer.asked(), answer.comparison());
  }

  private static Json of(
      TrialCase judged,
      ClassicalOutcome outcome,
      ClassicalRegression asked,
      Optional<Comparison> comparison) {
    Optional<ClassicalFit> fit =
        outcome instanceof ClassicalFit found ? Optional.of(found) : Optional.empty();
    return new Json()
        .put("stratum", WindowJson.stratum(judged.trials().stratum()))
        .put("evidence", WindowJson.evidence(judged.trials().evidence()))
        .put("event", outcome.event().word())
        .put("method", outcome.method().word())
        .put("rows", outcome.rows())
        .put("notes", outcome.notes())
        .put(
            "separation",
            outcome
                .separation()
                .map(s -> new Json().put("kind", s.kind()).put("meaning", s.words())))
        .put(
            "no_fit_reason",
            outcome instanceof NoClassicalFit none ? Optional.of(none.reason()) : Optional.empty())
        .put("limits_confidence", ClassicalRegression.LIMITS)
        .put("coefficients", fit.map(f -> coefficients(f.coefficients())))
        .put("limits_by", fit.map(ClassicalFit::limitsBy))
        .put("boards", fit.flatMap(ClassicalFit::boards).map(BoardSpreadText::json))
        .put(
            "passes_by_share",
            fit.map(ClassicalFit::passes).filter(p -> !p.isEmpty()).map(PassesByShareText::json))
        .put("at", fit.map(f -> at(judged, f)))
        .put("even_dose", fit.flatMap(ClassicalFit::even).map(ClassicalJson::dose))
        .put(
            "risk_dose",
            fit.flatMap(ClassicalFit::atRisk)
                .map(d -> dose(d, outcome.event(), asked.confidence())))
        .put("checks", fit.map(f -> checks(f.checks())))
        .put("posterior", comparison.map(ClassicalJson::posterior));
  }

  private static List<Json> coefficients(List<Coefficient> coefficients) {
    return coefficients.stream()
        .map(
            c ->
                limits(
                    new Json()
                        .put("name", c.name())
                        .put("estimate", c.estimate())
                        .put("standard_error", c.standardError()),
                    "low",
                    "high",
                    c.limits()))
        .toList();
  }

  private static Json at(TrialCase judged, ClassicalFit fit) {
    boolean pulsed = judged.trials().stratum().emission() == Emission.PULSED;
    return new Json()
        .put("passes", fit.at().passes())
        .put(pulsed ? "f0_j_cm2" : "f0_w_cm2", fit.at().intensity());
  }

  /** A dose with its limits on both sides, of {@code limits_confidence}. */
  private static Json dose(DoseAnswer dose) {
    return limits(
        new Json()
            .put("chance", dose.chance())
            .put("dose_j_cm2", dose.doseJoulesPerCm2())
            .put("rising", dose.rising()),
        "low_j_cm2",
        "high_j_cm2",
        dose.limits());
  }

  /** The same with a bound on one side. */
  private static Json dose(DoseAnswer dose, Event event, double confidence) {
    return dose(dose)
        .put("confidence", confidence)
        .put("bound_is", event == Event.CHAR ? "highest safe dose" : "lowest clearing dose")
        .put("bound_j_cm2", dose.bound());
  }

  private static Json limits(Json json, String low, String high, Limits limits) {
    return json.atLeast(low, limits.low()).atMost(high, limits.high());
  }

  private static Json checks(ClassicalChecks checks) {
    return new Json()
        .put("readings", checks.readings())
        .put("brier", checks.brier())
        .put("brier_of_share", checks.brierOfShare())
        .put("brier_left_out", checks.brierLeftOut())
        .put("left_out_trouble", checks.leftOutTrouble())
        .put(
            "hosmer_lemeshow",
            checks
                .hosmerLemeshow()
                .map(
                    t ->
                        new Json()
                            .put("grouping", "quantile cut")
                            .put("groups", t.groups())
                            .put("chi_square", t.statistic())
                            .put("degrees_of_freedom", t.degreesOfFreedom())
                            .put("probability", t.probability())))
        .put("hosmer_lemeshow_trouble", checks.hosmerLemeshowTrouble());
  }

  private static Json posterior(Comparison comparison) {
    return new Json()
        .put("even_dose_j_cm2", WindowJson.estimate(comparison.even()))
        .put("risk_dose_new_board_j_cm2", WindowJson.estimate(comparison.atRisk()))
        .put("bound_new_board_j_cm2", comparison.bound())
        .put("agreement", comparison.agreement().map(a -> a.name().toLowerCase(Locale.ROOT)))
        .put("why_they_differ", comparison.reasons());
  }
}
