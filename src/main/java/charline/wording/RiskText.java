package charline.wording;

import static charline.wording.Table.line;

import charline.answer.AskedRisk;
import charline.answer.Dialled;
import charline.answer.RiskAnswer;
import charline.exposure.AreaRate;
import charline.exposure.Emission;
import charline.exposure.LineScan;
import charline.model.Event;
import charline.quantity.Figures;
import charline.trial.Stratum;
import charline.window.JobRisk;
import charline.window.LiveForecast;
import charline.window.Strokes;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What one setting does, in words and figures. */
public final class RiskText {
  private RiskText() {}

  /** The answer for a person at the bench. */
  public static String of(AskedRisk asked) {
    RiskAnswer risk = asked.risk();
    Stratum stratum = asked.subject().trials().stratum();
    StringBuilder text = new StringBuilder();
    line(
        text,
        "%s, rig %s%s, on %s: %s, %s."
            .formatted(
                stratum.words(),
                risk.dialled().rig().name(),
                WayText.figure(asked.subject().trials().way()),
                board(risk),
                SettingsText.settings(risk.dialled().settings()),
                Figures.passes(risk.dialled().passes())));
    PrecautionText.headline(asked.precautions()).ifPresent(words -> line(text, words));
    if (!risk.reliable()) {
      line(text, unreliable(stratum) + " Ask for the window to see why.");
      return end(text, asked);
    }
    line(text, plainly(risk));
    line(text, tried(risk));
    stripes(risk).ifPresent(words -> line(text, "MIND: " + words));
    ProvisoText.of(asked).forEach(words -> line(text, "MIND: " + words));
    way(risk).ifPresent(words -> line(text, words));
    line(text, "Counted: " + RigSetupText.counted(risk.models().evidence()) + ".");
    PlaceText.notCounted(asked.subject()).ifPresent(words -> line(text, words));
    risk.piece()
        .ifPresent(
            piece -> {
              line(text, PieceText.forPiece(piece));
              line(text, PieceText.shifts(piece));
            });
    risk.general().ifPresent(any -> line(text, onAnyBoard(any)));
    BasisText.of(asked.subject().question()).ifPresent(words -> line(text, words));
    line(text, BoardPriorText.of(asked.boards()));
    text.append('\n').append(figures(asked)).append('\n');
    job(asked).ifPresent(words -> line(text, words));
    line(text, bounds(asked));
    return end(text, asked);
  }

  /** The coat and the way that the figures are for, where the trials mix several. */
  private static Optional<String> way(RiskAnswer risk) {
    LiveForecast models = risk.models();
    return WayText.of(
        Optional.of(models.charring()), Optional.of(models.clearing()), models.trials().patches());
  }

  private static String end(StringBuilder text, AskedRisk asked) {
    PrecautionText.inBrief(asked.precautions()).forEach(caution -> line(text, caution));
    line(text, CautionText.before("beam"));
    return text.toString();
  }

  /** Why no figure is shown. */
  public static String unreliable(Stratum stratum) {
    return "The models do not fit the trials of %s; trust none of these settings."
        .formatted(stratum.words());
  }

  /** "May char 1 area in 40; clears 19 in 20." with how it stands to what is asked. */
  public static String plainly(RiskAnswer risk) {
    return "May char %s (%s); %s (%s)."
        .formatted(
            chars(risk.expected()), charWord(risk), clears(risk.expected()), clearWord(risk));
  }

  /** "Safe for the wood: may char 1 in 170, clears 59 in 60": what leads where it was tried. */
  public static String inBrief(RiskAnswer risk) {
    String chars = "may char " + Figures.part(risk.expected().charRiskMean());
    String clears = "clears " + Figures.part(risk.expected().clearChanceMean());
    if (risk.keepsChar()) {
      return risk.keepsClearing()
          ? "Safe for the wood: %s, %s".formatted(chars, clears)
          : "May not clear: %s, %s".formatted(clears, chars);
    }
    return (risk.keepsClearing() ? "Hot: %s, %s" : "Hot, and may not clear: %s, %s")
        .formatted(chars, clears);
  }

  /** Both bounds in small numbers, each on its true side. */
  public static String atWorst(LiveForecast.Expected expected) {
    return atWorst(expected.charRiskUpper(), expected.clearChanceLower());
  }

  /** The same of an upper bound of the char risk and a lower one of the clearing chance. */
  public static String atWorst(double charRisk, double clearChance) {
    String chars = Figures.partAtMost(charRisk);
    String clears = Figures.partAtLeast(clearChance);
    return "%s, %s."
        .formatted(
            chars.equals(Figures.ALL) ? "All may char" : "At most %s char".formatted(chars),
            clears.equals(Figures.NONE) ? "none may clear" : "at least %s clear".formatted(clears));
  }

  /** Whether the char limit is kept: "within 5 %" or "over 5 %". */
  public static String charWord(RiskAnswer risk) {
    return (risk.keepsChar() ? "within " : "over ") + Figures.share(risk.asked().charRisk());
  }

  /** Whether the clearing limit is kept: "over 90 %" or "under 90 %". */
  public static String clearWord(RiskAnswer risk) {
    return (risk.keepsClearing() ? "over " : "under ") + Figures.share(risk.asked().clearChance());
  }

  private static String onAnyBoard(LiveForecast.Expected any) {
    return "On any other board it may char %s and %s.".formatted(chars(any), clears(any));
  }

  private static String chars(LiveForecast.Expected expected) {
    String part = Figures.partAtMost(expected.charRiskUpper());
    return part.equals(Figures.ALL) ? "every area" : "up to %s areas".formatted(part);
  }

  private static String clears(LiveForecast.Expected expected) {
    String part = Figures.partAtLeast(expected.clearChanceLower());
    return part.equals(Figures.NONE) ? "may clear none" : "clears at least " + part;
  }

  private static String tried(RiskAnswer risk) {
    return risk.expected().tried()
        ? "This setting lies inside what was tried."
            + tooFewCameThrough(risk).map(words -> " " + words).orElse("")
        : "UNTRIED: %s. Beyond the trials these figures are a guess.".formatted(notTried(risk));
  }

  /** That a window would not reach a setting which the models promise, where that is so. */
  public static Optional<String> tooFewCameThrough(RiskAnswer risk) {
    OptionalInt wanted = risk.expected().unharmedWanted();
    return risk.keepsChar() && wanted.isPresent()
        ? Optional.of(
            "The models alone promise this: fewer than %s came through as much without char."
                .formatted(Figures.patches(wanted.getAsInt())))
        : Optional.empty();
  }

  /** In what a setting lies outside the trials. */
  public static String notTried(RiskAnswer risk) {
    return Stream.of(
            BeyondText.of(risk.expected().beyond(), risk.dialled().rig().emission()),
            UntriedText.of(risk.expected().untried()))
        .filter(words -> !words.isEmpty())
        .collect(Collectors.joining("; "));
  }

  /** That lines lie so far apart that they leave stripes, where they do. */
  public static Optional<String> stripes(RiskAnswer risk) {
    return stripes(risk.dialled());
  }

  /** The same of a setting. */
  public static Optional<String> stripes(Dialled dialled) {
    return dialled.settings().form() instanceof LineScan lines && dialled.settings().linesApart()
        ? Optional.of(
            StripesText.of(
                lines.lineSpacingMillimetres(),
                dialled.settings().spot().oneOverESquaredMillimetres()))
        : Optional.empty();
  }

  /** Charred spots beside the risk; a patch's also as they would be over an area. */
  public static String spots(RiskAnswer risk) {
    Strokes strokes = risk.dialled().strokes();
    return strokes.equals(Strokes.SINGLE)
        ? "%s in single strokes; %s with strokes overlapping %s."
            .formatted(
                SpotsText.of(risk.spots()),
                SpotsText.of(risk.spotsOverAnArea()),
                Figures.share(Strokes.USUAL.overlap()))
        : "%s with strokes overlapping %s."
            .formatted(SpotsText.of(risk.spots()), Figures.share(strokes.overlap()));
  }

  /** "a board not seen yet", or the piece with how many patches of its own. */
  public static String board(RiskAnswer risk) {
    return risk.piece().map(piece -> piece.board().name()).orElse("a board not seen yet");
  }

  private static String figures(AskedRisk asked) {
    RiskAnswer risk = asked.risk();
    LiveForecast.Expected expected = risk.expected();
    Table table = new Table("", ">expected", ">bound");
    table.row(
        "char risk",
        Figures.percent(expected.charRiskMean()),
        "at most " + Figures.atMost(expected.charRiskUpper()));
    table.row(
        "charred spots per m²",
        Figures.three(risk.spots().mean()),
        "at most " + Figures.threeUp(risk.spots().upper()));
    table.row(
        "clearing chance",
        Figures.percent(expected.clearChanceMean()),
        "at least " + Figures.atLeast(expected.clearChanceLower()));
    table.row(
        "dose per pass, J/cm2", Figures.three(risk.dialled().exposure().doseJoulesPerCm2()), "");
    Emission emission = risk.dialled().rig().emission();
    table.row(
        "intensity, " + emission.intensityUnit(),
        Figures.three(risk.dialled().exposure().intensity()),
        "");
    table.row("net rate, cm2/min", Figures.three(netRate(risk.dialled())), "");
    return table.text();
  }

  /** Area covered in all passes, in cm²/min. */
  public static double netRate(Dialled dialled) {
    AreaRate once = dialled.exposure().areaRate().overlapping(dialled.strokes().overlap());
    return once.netOf(dialled.passes()).squareCentimetresPerMinute();
  }

  private static Optional<String> job(AskedRisk asked) {
    return asked.job().map(risk -> AskedText.of(risk, "this setting"));
  }

  private static String bounds(AskedRisk asked) {
    return "Each bound has %s confidence, per %s on %s%s%s."
        .formatted(
            Figures.share(asked.risk().asked().confidence()),
            asked.subject().trials().medianPatchSquareCentimetres().isPresent()
                ? Figures.three(
                        asked.subject().trials().medianPatchSquareCentimetres().getAsDouble())
                    + " cm²"
                : "patch-sized area (taken as %s cm²)"
                    .formatted(Figures.three(JobRisk.USUAL_PATCH_SQUARE_CENTIMETRES)),
            board(asked.risk()),
            asked.risk().dialled().strokes().overlap() == 0
                ? ""
                : ", seams of strokes overlapping %s counted"
                    .formatted(Figures.share(asked.risk().dialled().strokes().overlap())),
            asked.risk().asked().acceptTint() ? ", tint accepted" : "");
  }

  /** The answer as JSON. */
  public static Json json(AskedRisk asked) {
    RiskAnswer risk = asked.risk();
    Optional<LiveForecast.Expected> known =
        risk.reliable() ? Optional.of(risk.expected()) : Optional.empty();
    Json setting = SettingsJson.put(new Json(), risk.dialled().settings());
    boolean pulsed = risk.dialled().rig().emission() == Emission.PULSED;
    double intensity = risk.dialled().exposure().intensity();
    Json json =
        new Json()
            .put("stratum", WindowJson.stratum(asked.subject().trials().stratum()))
            .put("rig", risk.dialled().rig().name())
            .put("overlap", risk.dialled().strokes().overlap())
            .put("asked", WindowJson.asked(risk.asked()))
            .put("evidence", WindowJson.evidence(risk.models().evidence()))
            .put("way", way(risk))
            .put("not_counted", PlaceText.json(asked.subject()))
            .put(
                "setting",
                setting
                    .put("passes", risk.dialled().passes())
                    .put("dose_j_cm2", risk.dialled().exposure().doseJoulesPerCm2())
                    .put(pulsed ? "fluence_j_cm2" : "irradiance_w_cm2", intensity)
                    .put("area_rate_cm2_min", netRate(risk.dialled())))
            .put("reliable", risk.reliable());
    expected(json, known);
    json.put("charred_spots_per_m2", known.map(e -> SpotsText.json(risk.spots())))
        .put("keeps_char_risk", known.map(e -> risk.keepsChar()))
        .put("keeps_clear_chance", known.map(e -> risk.keepsClearing()))
        .put("provisos", risk.reliable() ? ProvisoText.of(asked) : List.of())
        .put("tried", risk.expected().tried())
        .put("too_few_came_through", risk.expected().unharmedWanted().isPresent())
        .put(
            "beyond",
            risk.expected().beyond().stream()
                .map(side -> BeyondText.of(List.of(side), risk.dialled().rig().emission()))
                .toList())
        .put("untried", risk.expected().untried().stream().map(UntriedText::json).toList())
        .put("job", asked.job().map(WindowJson::job))
        .put(
            "piece",
            risk.piece()
                .map(
                    piece ->
                        PieceText.json(piece)
                            .put(
                                "general",
                                risk.general().map(any -> expected(new Json(), Optional.of(any))))))
        .put("prior", BasisText.json(asked.subject().question()))
        .put(
            "boards",
            new Json()
                .put("char", BoardPriorText.json(asked.boards(), Event.CHAR))
                .put("clearing", BoardPriorText.json(asked.boards(), Event.CLEARING)));
    return PrecautionText.put(
        ApplicabilityText.of(asked.applicability()).json(json), asked.precautions());
  }

  private static Json expected(Json json, Optional<LiveForecast.Expected> known) {
    json.put("char_risk_mean", known.map(LiveForecast.Expected::charRiskMean));
    known.ifPresentOrElse(
        e -> json.atMost("char_risk_upper", e.charRiskUpper()),
        () -> json.put("char_risk_upper", null));
    json.put("clear_chance_mean", known.map(LiveForecast.Expected::clearChanceMean));
    known.ifPresentOrElse(
        e -> json.atLeast("clear_chance_lower", e.clearChanceLower()),
        () -> json.put("clear_chance_lower", null));
    return json;
  }
}
