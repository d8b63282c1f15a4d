package charline.web.pages;

import charline.answer.Dialled;
import charline.answer.RiskAnswer;
import charline.exposure.Emission;
import charline.exposure.Exposure;
import charline.model.Evidence;
import charline.model.way.Way;
import charline.model.way.WaysTried;
import charline.quantity.Figures;
import charline.trial.Patch;
import charline.trial.Plausibility.Doubt;
import charline.trial.Stratum;
import charline.web.live.LiveModels;
import charline.window.LiveForecast;
import charline.window.Requirements;
import charline.wording.RiskText;
import charline.wording.WayText;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What a dialled setting does, in words and figures, before it is fired. */
final class LiveRiskText {
  private LiveRiskText() {}

  /**
   * An answer for the page.
   *
   * @param dialled the setting; a patch is a single stroke
   * @param asked what the risk and the chance are compared with
   */
  static Map<String, Object> of(
      Stratum stratum, LiveModels.Known known, Dialled dialled, Requirements asked) {
    Map<String, Object> words = new LinkedHashMap<>();
    words.put(
        "does",
        does(stratum.emission(), dialled)
            + RiskText.stripes(dialled).map(stripes -> " " + stripes).orElse(""));
    words.put("renewing", known.renewing());
    if (known.models().isEmpty()) {
      words.put(
          "note",
          known.renewing()
              ? "The models are being fitted."
              : "No patch of %s yet, so nothing is known about this setting. Begin at the lowest dose."
                  .formatted(stratum.words()));
      return words;
    }
    RiskAnswer risk = RiskAnswer.of(known.models().get(), dialled, asked);
    if (!risk.reliable()) {
      words.put("note", RiskText.unreliable(stratum) + " The window page says why.");
      return words;
    }
    LiveForecast.Expected expected = risk.expected();
    words.put(
        "char",
        event(
            Figures.percent(expected.charRiskMean()),
            "at most " + Figures.atMost(expected.charRiskUpper()),
            risk.keepsChar(),
            RiskText.charWord(risk)));
    words.put(
        "clear",
        event(
            Figures.percent(expected.clearChanceMean()),
            "at least " + Figures.atLeast(expected.clearChanceLower()),
            risk.keepsClearing(),
            RiskText.clearWord(risk)));
    words.put("spots", onPiece(risk) + RiskText.spots(risk));
    words.put("tried", expected.tried());
    if (!expected.tried()) {
      words.put("beyond", "Not tried here: %s.".formatted(RiskText.notTried(risk)));
    }
    words.put(
        "rests",
        (expected.tried() ? "" : "Beyond the trials these figures are a guess. ")
            + rests(stratum, risk, known.renewing()));
    return words;
  }

  /**
   * That nothing is known of a way of working, where the stratum was tried in others.
   *
   * @param burned patches of the stratum
   */
  static Optional<String> untried(Stratum stratum, List<Patch> burned, Way way) {
    return burned.isEmpty() || WaysTried.among(burned, way)
        ? Optional.empty()
        : Optional.of(
            "No patch of %s with %s yet, so nothing is known about this setting. Begin at the lowest dose."
                .formatted(stratum.words(), WayText.asked(way)));
  }

  /** Puts before the figures what power they are for, where what was typed can mean another. */
  static void doubt(Map<String, Object> words, List<Doubt> doubts) {
    for (Doubt doubt : doubts) {
      words.merge("note", doubt.sentence(), (note, first) -> first + " " + note);
    }
  }

  private static Map<String, Object> event(String about, String bound, boolean kept, String word) {
    Map<String, Object> event = new LinkedHashMap<>();
    event.put("about", about);
    event.put("bound", bound);
    event.put("kept", kept);
    event.put("word", word);
    return event;
  }

  private static String does(Emission emission, Dialled dialled) {
    Exposure exposure = dialled.exposure();
    return "Dose %s J/cm² a pass, %s %s, %s cm²/min in all."
        .formatted(
            Figures.significant(exposure.doseJoulesPerCm2(), 3),
            emission == Emission.PULSED ? "fluence" : "irradiance",
            emission == Emission.PULSED
                ? Figures.significant(exposure.intensity(), 3) + " J/cm²"
                : Figures.significant(exposure.intensity() / 1000, 3) + " kW/cm²",
            Figures.significant(RiskText.netRate(dialled), 2));
  }

  /** The piece that the figures are for, where they are for one. */
  private static String onPiece(RiskAnswer risk) {
    return risk.piece()
        .map(
            piece ->
                "On %s, by %s of its own: "
                    .formatted(piece.board().name(), Figures.patches(piece.patches())))
        .orElse("");
  }

  private static String rests(Stratum stratum, RiskAnswer risk, boolean renewing) {
    Evidence evidence = risk.models().evidence();
    return "From %s on %s, %s; each bound with %s confidence, on %s.%s"
        .formatted(
            Figures.count(evidence.patches(), "patch", "patches"),
            Figures.count(evidence.boards(), "board", "boards"),
            stratum.words(),
            Figures.share(risk.asked().confidence()),
            risk.piece()
                .map(
                    piece ->
                        "%s, which has %s of its own"
                            .formatted(RiskText.board(risk), Figures.patches(piece.patches())))
                .orElseGet(() -> RiskText.board(risk)),
            renewing ? " Newer patches are being added." : "");
  }
}
