package charline.web.pages;

import charline.answer.Dialled;
import charline.answer.RiskAnswer;
import charline.exposure.Emission;
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
  private static final String EXPLORING = "Find the limit on an offcut.";

  private LiveRiskText() {}

  /**
   * What leads.
   *
   * @param state safe, hot, cool, untried, stop or unknown: the name of its sign
   * @param word a few words
   * @param bounds a line below
   */
  static void say(Map<String, Object> words, String state, String word, String bounds) {
    words.put("state", state);
    words.put("word", word);
    words.put("bounds", bounds);
  }

  /** That a setting cannot be one, and why. */
  static void refuse(Map<String, Object> words, String sentence) {
    say(words, "unknown", "No setting yet", sentence);
  }

  /**
   * An answer for the page.
   *
   * @param dialled the setting; a patch is a single stroke
   * @param asked what the risk and the chance are compared with
   */
  static Map<String, Object> of(
      Stratum stratum, LiveModels.Known known, Dialled dialled, Requirements asked) {
    Map<String, Object> words = new LinkedHashMap<>();
    words.put("does", does(dialled));
    RiskText.stripes(dialled).ifPresent(stripes -> words.put("note", stripes));
    words.put("renewing", known.renewing());
    if (known.models().isEmpty()) {
      if (known.renewing()) {
        say(words, "unknown", "Working out the risk", "The models are being fitted.");
      } else {
        say(
            words,
            "untried",
            "Not tried: nothing is known here",
            "No patch of %s yet. Begin at the lowest dose.".formatted(stratum.words()));
      }
      return words;
    }
    RiskAnswer risk = RiskAnswer.of(known.models().get(), dialled, asked);
    if (!risk.reliable()) {
      say(
          words,
          "untried",
          "No promise anywhere",
          RiskText.unreliable(stratum) + " The window page says why.");
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
    if (expected.tried()) {
      String worst =
          RiskText.atWorst(expected)
              + RiskText.tooFewCameThrough(risk).map(few -> " " + few).orElse("");
      boolean exploring = !risk.keepsChar() && risk.piece().isEmpty();
      say(
          words,
          risk.keepsChar() ? risk.keepsClearing() ? "safe" : "cool" : "hot",
          RiskText.inBrief(risk),
          exploring ? worst + " " + EXPLORING : worst);
    } else {
      say(
          words,
          "untried",
          "Not tried: no promise here",
          "Outside the patches: %s.".formatted(RiskText.notTried(risk)));
    }
    words.put(
        "rests",
        (expected.tried() ? "" : "Beyond the trials these figures are a guess. ")
            + rests(stratum, risk, known.renewing())
            + " "
            + beam(stratum.emission(), dialled));
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

  private static String does(Dialled dialled) {
    return "Dose %s J/cm² a pass, %s cm²/min in all"
        .formatted(
            Figures.significant(dialled.exposure().doseJoulesPerCm2(), 3),
            Figures.significant(RiskText.netRate(dialled), 2));
  }

  private static String beam(Emission emission, Dialled dialled) {
    double intensity = dialled.exposure().intensity();
    return emission == Emission.PULSED
        ? "Mean fluence %s J/cm².".formatted(Figures.significant(intensity, 3))
        : "Mean irradiance %s kW/cm².".formatted(Figures.significant(intensity / 1000, 3));
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
