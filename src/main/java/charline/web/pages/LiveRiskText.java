package charline.web.pages;

import charline.exposure.Emission;
import charline.exposure.Exposure;
import charline.exposure.LineScan;
import charline.exposure.Settings;
import charline.model.Evidence;
import charline.quantity.Figures;
import charline.trial.Plausibility.Doubt;
import charline.trial.Rig;
import charline.trial.Stratum;
import charline.web.live.LiveModels;
import charline.window.CharredSpots;
import charline.window.LiveForecast;
import charline.window.Requirements;
import charline.window.Strokes;
import charline.wording.BeyondText;
import charline.wording.SpotsText;
import charline.wording.StripesText;
import charline.wording.UntriedText;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What a dialled setting does, in words and figures, before it is fired. */
final class LiveRiskText {
  private LiveRiskText() {}

  /**
   * An answer for the page.
   *
   * @param rig that it is dialled on
   * @param settings all that is dialled
   * @param at moment whose power check counts
   * @param passes 1 or more
   * @param strokes how the work is covered; a patch is a single stroke
   * @param asked what the risk and the chance are held against
   */
  static Map<String, Object> of(
      Stratum stratum,
      LiveModels.Known known,
      Rig rig,
      Settings settings,
      OffsetDateTime at,
      int passes,
      Strokes strokes,
      Requirements asked) {
    Exposure exposure =
        Exposure.of(
            rig.emission(), rig.deliveredWatts(settings.power(), settings.pulses(), at), settings);
    Map<String, Object> words = new LinkedHashMap<>();
    words.put("does", does(stratum.emission(), exposure, passes, strokes) + stripes(settings));
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
    LiveForecast models = known.models().get();
    if (!models.reliable()) {
      words.put(
          "note",
          "The models do not fit the trials of %s; trust none of these settings. The window page says why."
              .formatted(stratum.words()));
      return words;
    }
    LiveForecast.Expected expected =
        models.at(rig, settings, exposure, passes, strokes, asked.confidence());
    words.put(
        "char",
        event(
            Figures.percent(expected.charRiskMean()),
            "at most " + Figures.atMost(expected.charRiskUpper()),
            expected.charRiskUpper() <= asked.charRisk(),
            "within " + Figures.share(asked.charRisk()),
            "over " + Figures.share(asked.charRisk())));
    words.put(
        "clear",
        event(
            Figures.percent(expected.clearChanceMean()),
            "at least " + Figures.atLeast(expected.clearChanceLower()),
            expected.clearChanceLower() >= asked.clearChance(),
            "over " + Figures.share(asked.clearChance()),
            "under " + Figures.share(asked.clearChance())));
    LiveForecast.Expected overAnArea =
        strokes.equals(Strokes.SINGLE)
            ? models.at(rig, settings, exposure, passes, Strokes.USUAL, asked.confidence())
            : expected;
    words.put(
        "spots", spots(models.charredSpots(expected), models.charredSpots(overAnArea), strokes));
    words.put("tried", expected.tried());
    if (!expected.tried()) {
      words.put("beyond", "Not tried here: %s.".formatted(notTried(expected, stratum.emission())));
    }
    words.put(
        "rests",
        (expected.tried() ? "" : "Beyond the trials these figures are a guess. ")
            + rests(stratum, models.evidence(), known.renewing(), asked));
    return words;
  }

  private static String notTried(LiveForecast.Expected expected, Emission emission) {
    return Stream.of(BeyondText.of(expected.beyond(), emission), UntriedText.of(expected.untried()))
        .filter(words -> !words.isEmpty())
        .collect(Collectors.joining("; "));
  }

  /** Puts before the figures what power they are for, where what was typed can mean another. */
  static void doubt(Map<String, Object> words, List<Doubt> doubts) {
    for (Doubt doubt : doubts) {
      words.merge("note", doubt.sentence(), (note, first) -> first + " " + note);
    }
  }

  private static Map<String, Object> event(
      String about, String bound, boolean kept, String keptWord, String brokenWord) {
    Map<String, Object> event = new LinkedHashMap<>();
    event.put("about", about);
    event.put("bound", bound);
    event.put("kept", kept);
    event.put("word", kept ? keptWord : brokenWord);
    return event;
  }

  /** Charred spots beside the risk; a patch's also as they would be over an area. */
  private static String spots(CharredSpots own, CharredSpots overAnArea, Strokes strokes) {
    return strokes.equals(Strokes.SINGLE)
        ? "%s in single strokes; %s with strokes overlapping %s."
            .formatted(
                SpotsText.of(own), SpotsText.of(overAnArea), Figures.share(Strokes.USUAL.overlap()))
        : "%s with strokes overlapping %s."
            .formatted(SpotsText.of(own), Figures.share(strokes.overlap()));
  }

  private static String does(Emission emission, Exposure exposure, int passes, Strokes strokes) {
    return "Dose %s J/cm² a pass, %s %s, %s cm²/min in all."
        .formatted(
            Figures.significant(exposure.doseJoulesPerCm2(), 3),
            emission == Emission.PULSED ? "fluence" : "irradiance",
            emission == Emission.PULSED
                ? Figures.significant(exposure.intensity(), 3) + " J/cm²"
                : Figures.significant(exposure.intensity() / 1000, 3) + " kW/cm²",
            Figures.significant(
                exposure
                    .areaRate()
                    .overlapping(strokes.overlap())
                    .netOf(passes)
                    .squareCentimetresPerMinute(),
                2));
  }

  private static String stripes(Settings settings) {
    return settings.form() instanceof LineScan lines && settings.linesApart()
        ? " "
            + StripesText.of(
                lines.lineSpacingMillimetres(), settings.spot().oneOverESquaredMillimetres())
        : "";
  }

  private static String rests(
      Stratum stratum, Evidence evidence, boolean renewing, Requirements asked) {
    return "From %s on %s, %s; each bound with %s confidence, on a board not seen yet.%s"
        .formatted(
            Figures.count(evidence.patches(), "patch", "patches"),
            Figures.count(evidence.boards(), "board", "boards"),
            stratum.words(),
            Figures.share(asked.confidence()),
            renewing ? " Newer patches are being added." : "");
  }
}
