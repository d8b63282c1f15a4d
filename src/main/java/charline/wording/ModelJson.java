package charline.wording;

import charline.answer.ModelAnswer;
import charline.answer.TrialCase;
import charline.model.ModelFit;
import charline.model.check.FitChecks;

/** One fitted model as JSON. */
public final class ModelJson {
  private ModelJson() {}

  public static Json of(ModelAnswer answer) {
    TrialCase judged = answer.subject();
    ModelFit fit = answer.fit();
    FitChecks checks = answer.checks();
    return new Json()
        .put("stratum", WindowJson.stratum(judged.trials().stratum()))
        .put("evidence", WindowJson.evidence(judged.trials().evidence()))
        .put("not_counted", PlaceText.json(judged))
        .put("event", fit.event().word())
        .put("model", WindowJson.model(fit, judged.bench(), answer.boards()))
        .put(
            "piece",
            answer.piece().map(piece -> PieceText.json(judged.piece().orElseThrow(), piece)))
        .put("borrowed", BorrowText.json(fit))
        .put("prior", BasisText.json(judged.question()))
        .put("effective_draws", fit.effectiveDraws())
        .put("method", fit.method())
        .put("reliable", !checks.fail())
        .put("hotter_sooner", checks.contradictions().agreeing())
        .put("hotter_later", checks.contradictions().denying())
        .put("checks", CheckJson.of(checks));
  }
}
