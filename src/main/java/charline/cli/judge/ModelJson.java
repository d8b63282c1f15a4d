package charline.cli.judge;

import charline.cli.render.Json;
import charline.model.Contradictions;
import charline.model.ModelFit;

/** One fitted model as JSON. */
final class ModelJson {
  private ModelJson() {}

  static Json of(StratumOptions.Case judged, ModelFit fit, Contradictions checks) {
    return new Json()
        .put("stratum", WindowJson.stratum(judged.trials().stratum()))
        .put("evidence", WindowJson.evidence(judged.trials().evidence()))
        .put("event", fit.event().word())
        .put("model", WindowJson.model(fit, judged.bench()))
        .put("effective_draws", fit.effectiveDraws())
        .put("method", fit.method())
        .put("reliable", fit.reliable() && !checks.decisive())
        .put("hotter_sooner", checks.agreeing())
        .put("hotter_later", checks.denying());
  }
}
