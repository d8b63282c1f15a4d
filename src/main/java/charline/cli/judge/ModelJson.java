package charline.cli.judge;

import charline.cli.render.Json;
import charline.model.ModelFit;
import charline.model.check.FitChecks;

/** One fitted model as JSON. */
final class ModelJson {
  private ModelJson() {}

  static Json of(StratumOptions.Case judged, ModelFit fit, FitChecks checks) {
    return new Json()
        .put("stratum", WindowJson.stratum(judged.trials().stratum()))
        .put("evidence", WindowJson.evidence(judged.trials().evidence()))
        .put("event", fit.event().word())
        .put("model", WindowJson.model(fit, judged.bench()))
        .put("borrowed", BorrowText.json(fit))
        .put("effective_draws", fit.effectiveDraws())
        .put("method", fit.method())
        .put("reliable", !checks.fail())
        .put("hotter_sooner", checks.contradictions().agreeing())
        .put("hotter_later", checks.contradictions().denying())
        .put("checks", CheckJson.of(checks));
  }
}
