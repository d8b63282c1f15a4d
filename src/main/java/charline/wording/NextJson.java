package charline.wording;

import charline.answer.NextAnswer;
import charline.plan.NextPatches;
import charline.plan.Suggestion;
import charline.trial.Board;
import java.util.List;

/** The patches to burn next as JSON. */
public final class NextJson {
  private NextJson() {}

  public static Json of(NextAnswer answer, List<String> codes) {
    NextPatches next = answer.next();
    Json json =
        new Json()
            .put("stratum", WindowJson.stratum(answer.stratum()))
            .put("rig", next.bench().rig().name())
            .put("on", next.site().word())
            .put("piece", answer.question().piece())
            .put("verdict", next.window().map(w -> w.verdict().word()))
            .put("reason", PlanText.standing(next.standing()))
            .put("advice", PlanText.advice(next.advice()))
            .put(
                "borrowed",
                new Json()
                    .put("char", next.window().flatMap(w -> w.charFit()).flatMap(BorrowText::json))
                    .put(
                        "clearing",
                        next.window().flatMap(w -> w.clearingFit()).flatMap(BorrowText::json)))
            .put("prior", BasisText.json(answer.question()))
            .put("overlap", next.bench().strokes().overlap())
            .put("provisos", next.window().map(ProvisoText::of).orElse(List.of()))
            .put("patches", patches(next, codes));
    return PrecautionText.put(json, answer.precautions());
  }

  /** The patches, with the codes that are reserved for them if any are. */
  static List<Json> patches(NextPatches next, List<String> codes) {
    return next.suggestions().stream().map(s -> suggestion(next, s, codes)).toList();
  }

  private static Json suggestion(NextPatches next, Suggestion s, List<String> codes) {
    Json json =
        new Json()
            .put("number", s.number())
            .put("patch", codes.isEmpty() ? null : codes.get(s.number() - 1))
            .put("purpose", s.purpose().word())
            .put("reason", PlanText.motive(s.motive()))
            .put("board", s.place().board().map(Board::name))
            .put("place", s.place().name())
            .put("only_after", s.onlyAfter().isPresent() ? s.onlyAfter().getAsInt() : null)
            .put("passes", s.passes());
    SettingsJson.put(json, s.settings());
    return json.put("dose_j_cm2", s.setting().doseJoulesPerCm2())
        .put("intensity", s.setting().intensity())
        .put("char_risk_mean", s.charRiskMean())
        .atMost("char_risk_upper", s.charRiskUpper())
        .put("charred_spots_per_m2", SpotsText.json(next.charredSpots(s)))
        .put("clear_chance_mean", s.clearChanceMean())
        .put("effect", PlanText.gain(s.gain()));
  }
}
