package charline.web.pages;

import charline.answer.NearWood;
import charline.answer.TrialQuestion;
import charline.answer.WindowAnswer;
import charline.paper.MapPicture;
import charline.quantity.Figures;
import charline.trial.Caution;
import charline.trial.Patch;
import charline.trial.Stratum;
import charline.window.Box;
import charline.window.Forecast;
import charline.window.PieceEvidence;
import charline.window.Range;
import charline.window.Recommendation;
import charline.window.Verdict;
import charline.window.WindowMap;
import charline.wording.AskedText;
import charline.wording.BoardPriorText;
import charline.wording.BorrowText;
import charline.wording.BriefList;
import charline.wording.NearWoodText;
import charline.wording.PieceText;
import charline.wording.PlaceText;
import charline.wording.PlanText;
import charline.wording.ProvisoText;
import charline.wording.ReasonText;
import charline.wording.RigSetupText;
import charline.wording.RiskText;
import charline.wording.SpotsText;
import charline.wording.VerdictText;
import charline.wording.WayText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One window as the page shows it.
 *
 * @param limits the fields that ask for other limits
 * @param behind what the answer does not hold yet, in a line, if so
 * @param notValid why the window must not be used any more, if so
 * @param asked what the window keeps, over a job too where one was asked about
 * @param provisos what has to be known beside the verdict
 * @param piece what the patches of the piece say and changed, where it is for one
 * @param state name of the sign of the verdict
 * @param headline the verdict in a sentence for a layman
 * @param leads the line below it: the bounds at the start, or the first reason
 * @param atStart the figures of the start, only where there is a window
 * @param unlike that the piece is unlike the other boards, if it is
 * @param boards where the expected spread of boards comes from
 * @param woods which woods were pooled, and which near ones were not counted
 * @param poison poison and fire in short, if the coat or the wood brings any
 * @param nextPatches the patches to burn next, those alike in one line
 * @param start the start setting, only where there is a window
 * @param map the map with where its edges lie
 * @param query part of the address that asks the same again
 */
public record WindowView(
    Stratum stratum,
    LimitFields limits,
    Optional<String> behind,
    Optional<Caution> notValid,
    Optional<String> poison,
    String verdict,
    String state,
    String headline,
    String leads,
    Optional<String> atStart,
    String reason,
    String nextStep,
    List<BriefList.Line> nextPatches,
    List<String> asked,
    List<String> provisos,
    List<String> piece,
    Optional<String> unlike,
    String boards,
    Woods woods,
    Optional<Start> start,
    Optional<Map> map,
    List<Caution> cautions,
    String speedWords,
    String query) {

  private static final String FOR_THE_PIECE =
      "Record them on a board of the piece's own and choose it below, where you ask for one piece:"
          + " they confirm the window for it.";

  /**
   * Which woods count.
   *
   * @param sentences what was pooled and what was left out
   * @param pool part of the address that counts the near woods too, if there are any
   */
  public record Woods(List<String> sentences, Optional<String> pool) {
    static Woods of(WindowAnswer answer) {
      Stratum stratum = answer.found().stratum();
      List<NearWood> near = answer.nearWoods();
      List<String> all = new ArrayList<>(stratum.woods());
      near.forEach(wood -> all.add(wood.wood()));
      return new Woods(
          Stream.of(
                  NearWoodText.pooled(stratum, answer.found().patches()),
                  NearWoodText.notCounted(near))
              .flatMap(Optional::stream)
              .toList(),
          near.isEmpty()
              ? Optional.empty()
              : Optional.of(
                  Asking.query(stratum.over(Stratum.pooled(all)), answer.subject().question())));
    }
  }

  /** The start setting with the ranges to stay in. */
  public record Start(List<Line> lines, String fixed, String recordLink) {}

  /** A knob with its start and its range. */
  public record Line(String name, String value, String unit, String range) {}

  /**
   * The map.
   *
   * @param picture the drawing
   * @param passes for how many passes it is drawn
   * @param lowPower power at the lower edge of the plot
   * @param highPower power at the upper edge
   * @param lowSpeed speed at the left edge
   * @param highSpeed speed at the right edge
   * @param power where the marker begins
   * @param speed where the marker begins
   */
  public record Map(
      MapPicture picture,
      int passes,
      double lowPower,
      double highPower,
      double lowSpeed,
      double highSpeed,
      String power,
      String speed) {}

  static WindowView of(
      WindowAnswer answer,
      LimitFields limits,
      Optional<String> behind,
      Optional<Caution> notValid,
      Optional<String> poison,
      List<Caution> cautions) {
    Recommendation found = answer.found();
    TrialQuestion question = answer.subject().question();
    Optional<Box> box = found.chosen().filter(b -> found.verdict() == Verdict.WINDOW);
    return new WindowView(
        found.stratum(),
        limits,
        behind,
        notValid,
        poison,
        VerdictText.of(found),
        state(found.verdict(), notValid.isEmpty()),
        VerdictText.plainly(found, notValid.isEmpty()),
        box.map(b -> RiskText.atWorst(b.start().charRiskUpper(), b.start().clearChanceLower()))
            .orElseGet(() -> firstOf(ReasonText.of(found))),
        box.map(b -> atStart(b.start(), found)),
        ReasonText.of(found),
        nextStep(answer),
        BriefList.lines(answer.next()),
        asked(answer),
        ProvisoText.of(found),
        piece(answer),
        answer.piece().flatMap(PieceText::unlike),
        BoardPriorText.of(answer.boards()),
        Woods.of(answer),
        box.map(b -> start(b, found)),
        MapPicture.forScreen(found).flatMap(picture -> found.map().map(m -> map(picture, m, box))),
        cautions,
        found.bench().speed().kind().words(),
        Asking.query(found.stratum(), question));
  }

  /** The name of the sign of a verdict on a rig that is still as it was, or not. */
  static String state(Verdict verdict, boolean valid) {
    return switch (verdict) {
      case WINDOW -> valid ? "safe" : "heed";
      case NOT_YET -> "heed";
      case NONE -> "hot";
      case UNRELIABLE -> "untried";
    };
  }

  /** The first sentence leads; all of them are below. */
  private static String firstOf(String sentences) {
    int end = sentences.indexOf(". ");
    return end < 0 ? sentences : sentences.substring(0, end + 1);
  }

  private static String nextStep(WindowAnswer answer) {
    String advice = PlanText.advice(answer.next().advice());
    return answer.isWindow() && answer.piece().isEmpty() ? advice + " " + FOR_THE_PIECE : advice;
  }

  private static List<String> piece(WindowAnswer answer) {
    List<String> sentences = new ArrayList<>();
    answer
        .piece()
        .ifPresent(
            piece -> {
              sentences.add(PieceText.forPiece(piece.fits()));
              sentences.add(PieceText.shifts(piece.fits()));
              sentences.add(PieceText.general(piece.general()));
              PieceText.standing(answer.found())
                  .ifPresent(standing -> sentences.add("Standing: " + standing));
            });
    return sentences;
  }

  private static List<String> asked(WindowAnswer answer) {
    Recommendation found = answer.found();
    List<String> sentences = new ArrayList<>();
    sentences.add("Asked: " + AskedText.of(found));
    AskedText.of(found, answer.subject().question().job()).ifPresent(sentences::add);
    answer.job().map(AskedText::of).ifPresent(sentences::add);
    PlaceText.notCounted(answer.subject()).ifPresent(sentences::add);
    WayText.of(found.charFit(), found.clearingFit(), found.patches()).ifPresent(sentences::add);
    Stream.of(found.charFit(), found.clearingFit())
        .flatMap(Optional::stream)
        .flatMap(fit -> BorrowText.of(fit).stream())
        .forEach(sentences::add);
    return sentences;
  }

  static Start start(Box box, Recommendation found) {
    Forecast start = box.start();
    return new Start(
        List.of(
            new Line(
                "Power",
                Figures.shortest(start.powerPercent()),
                "%",
                "stay in %s".formatted(inward(box.powerPercent()))),
            new Line(
                RigSetupText.speedLabel(found.bench()),
                Figures.shortest(start.speedMillimetresPerSecond()),
                "mm/s",
                "stay in %s".formatted(inward(box.speedMillimetresPerSecond()))),
            new Line(
                "Passes",
                String.valueOf(box.passes()),
                "",
                box.passes() == 1 ? "once, then look" : "cool in between")),
        "Rig %s: %s."
            .formatted(
                found.bench().rig().name(),
                RigSetupText.fixed(found.bench(), "scan width") + WayText.fixed(found.charFit())),
        recordLink(box, found));
  }

  /** The figures at the start, each bound on its true side. */
  static String atStart(Forecast start, Recommendation found) {
    return "At the start: char risk %s, at most %s (%s); clears %s, at least %s; %s cm²/min in all."
        .formatted(
            Figures.percent(start.charRiskMean()),
            Figures.atMost(start.charRiskUpper()),
            SpotsText.of(found.charredSpots(start)),
            Figures.percent(start.clearChanceMean()),
            Figures.atLeast(start.clearChanceLower()),
            Figures.significant(start.netAreaRateSquareCentimetresPerMinute(), 2));
  }

  private static String inward(Range range) {
    return Figures.inward(range.low(), range.high());
  }

  /**
   * Record with this setting on the window's rig; board and finish as the latest patch had them, of
   * the piece where the window is for one.
   */
  private static String recordLink(Box box, Recommendation found) {
    List<Patch> patches =
        found.patches().stream()
            .filter(
                p ->
                    found
                        .piece()
                        .map(PieceEvidence::name)
                        .orElse(p.board().name())
                        .equals(p.board().name()))
            .toList();
    return RecordLink.of(
        patches.get(patches.size() - 1).code(),
        found.bench(),
        box.start().powerPercent(),
        box.start().speedMillimetresPerSecond(),
        box.passes());
  }

  private static Map map(MapPicture picture, WindowMap map, Optional<Box> box) {
    List<Double> powers = map.powersPercent();
    List<Double> speeds = map.speedsMillimetresPerSecond();
    double power = box.map(b -> b.start().powerPercent()).orElse(powers.get(powers.size() / 2));
    double speed =
        box.map(b -> b.start().speedMillimetresPerSecond()).orElse(speeds.get(speeds.size() / 2));
    return new Map(
        picture,
        map.passes(),
        powers.get(0) / halfCell(powers),
        powers.get(powers.size() - 1) * halfCell(powers),
        speeds.get(0) / halfCell(speeds),
        speeds.get(speeds.size() - 1) * halfCell(speeds),
        Figures.significant(power, 3),
        Figures.significant(speed, 3));
  }

  /** The drawing ends half a cell beyond the outermost cell centres. */
  private static double halfCell(List<Double> centres) {
    return Math.pow(centres.get(centres.size() - 1) / centres.get(0), 0.5 / (centres.size() - 1));
  }
}
