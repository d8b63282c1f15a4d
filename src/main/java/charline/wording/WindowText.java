package charline.wording;

import static charline.quantity.Figures.plain;
import static charline.wording.Table.line;

import charline.answer.BorrowOffer;
import charline.answer.NearWood;
import charline.answer.Precautions;
import charline.answer.PriorSensitivity;
import charline.answer.WindowAnswer;
import charline.plan.NextPatches;
import charline.quantity.Figures;
import charline.trial.Caution;
import charline.window.Box;
import charline.window.Forecast;
import charline.window.JobLimit;
import charline.window.JobRisk;
import charline.window.Range;
import charline.window.Recommendation;
import charline.window.RigSetup;
import charline.window.Verdict;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A recommendation for a person at the bench.
 *
 * @param woods which woods were pooled, and which near ones were not counted
 * @param limit the job whose risk was asked for, if any
 * @param next the patches to burn next
 * @param offer what other trials could lend, where nothing was borrowed
 * @param boards where the expected spread of boards comes from
 * @param piece what the patches of the piece say and changed, where it is for one
 * @param confirm how control patches on the piece are made to count, where it is for any board
 */
public record WindowText(
    Recommendation found,
    Optional<JobLimit> limit,
    NextPatches next,
    Optional<JobRisk> job,
    List<String> woods,
    Optional<String> offer,
    String boards,
    List<String> piece,
    Optional<String> confirm,
    PriorText priors,
    Precautions precautions) {
  /**
   * The words for an answer.
   *
   * @param hints how what it suggests is done on this face
   */
  public static WindowText of(WindowAnswer answer, PriorSensitivity priors, FaceHints hints) {
    return new WindowText(
        answer.found(),
        answer.subject().question().job(),
        answer.next(),
        answer.job(),
        woods(answer, hints),
        answer.offer().map(offer -> FaceHints.with(offer(offer), hints.borrow())),
        BoardPriorText.of(answer.boards()),
        answer.piece().map(PieceText::of).orElse(List.of()),
        answer.isWindow() && answer.piece().isEmpty() ? hints.forPiece() : Optional.empty(),
        PriorText.of(priors),
        answer.precautions());
  }

  private static List<String> woods(WindowAnswer answer, FaceHints hints) {
    List<NearWood> near = answer.nearWoods();
    List<String> names = near.stream().map(NearWood::wood).toList();
    return Stream.of(
            NearWoodText.pooled(answer.found().stratum(), answer.found().patches()),
            PlaceText.notCounted(answer.subject()),
            NearWoodText.notCounted(near).map(words -> FaceHints.with(words, hints.pool(names))))
        .flatMap(Optional::stream)
        .toList();
  }

  private static String offer(BorrowOffer offer) {
    return "Judged alone: nothing was borrowed from the log's other trials with this light (%s, %s)."
        .formatted(
            Figures.count(offer.strata(), "stratum", "strata"),
            Figures.count(offer.patches(), "patch", "patches"));
  }

  public String text() {
    StringBuilder text = new StringBuilder();
    line(
        text,
        "%s, rig %s%s: %s"
            .formatted(
                found.stratum().words(),
                found.bench().rig().name(),
                found.piece().map(own -> ", for " + own.name()).orElse(""),
                verdict()));
    PrecautionText.headline(precautions).ifPresent(words -> line(text, words));
    line(text, "Counted: " + RigSetupText.counted(found.evidence()) + ".");
    piece.forEach(words -> line(text, words));
    if (found.piece().isPresent()) {
      PieceText.standing(found).ifPresent(words -> line(text, "Standing: " + words));
    }
    woods.forEach(words -> line(text, words));
    line(text, "Asked: " + AskedText.of(found));
    AskedText.of(found, limit).ifPresent(words -> line(text, words));
    ProvisoText.of(found).forEach(proviso -> line(text, "MIND: " + proviso));
    WayText.of(found.charFit(), found.clearingFit(), found.patches())
        .ifPresent(way -> line(text, way));
    Stream.of(found.charFit(), found.clearingFit())
        .flatMap(Optional::stream)
        .flatMap(fit -> BorrowText.of(fit).stream())
        .forEach(borrowed -> line(text, borrowed));
    offer.ifPresent(words -> line(text, words));
    found.chosen().ifPresent(box -> text.append('\n').append(box(box)));
    text.append('\n');
    line(text, "Why: " + ReasonText.of(found));
    line(text, "Next: " + PlanText.advice(next.advice()));
    BriefList.lines(next)
        .forEach(line -> text.append(Table.hanging("  " + line.numbers() + "  ", line.words())));
    confirm.ifPresent(words -> line(text, words));
    if (found.verdict() == Verdict.NOT_YET) {
      line(
          text,
          "Chance that any setting keeps both limits: %s."
              .formatted(Figures.percent(found.chanceAnyWindow())));
    }
    job.ifPresent(risk -> line(text, AskedText.of(risk)));
    line(text, priors.sentence());
    line(text, boards);
    PrecautionText.inBrief(precautions).forEach(caution -> line(text, caution));
    line(text, cautionLine());
    return text.toString();
  }

  private String verdict() {
    return switch (found.verdict()) {
      case WINDOW -> found.standing().map(s -> "a window, " + s.word() + ".").orElse("a window.");
      case NOT_YET -> "no window yet.";
      case NONE -> "no window; use another method.";
      case UNRELIABLE -> "no answer; the models do not fit these trials.";
    };
  }

  private String box(Box box) {
    RigSetup bench = found.bench();
    String speed = bench.speed().kind().words();
    StringBuilder text = new StringBuilder();
    text.append(
        "START  %s %%, %s %s mm/s, %s\n"
            .formatted(
                plain(box.start().powerPercent()),
                speed,
                Figures.three(box.start().speedMillimetresPerSecond()),
                Figures.count(box.passes(), "pass", "passes")));
    text.append(
        "STAY   power %s %%, %s %s mm/s\n"
            .formatted(inward(box.powerPercent()), speed, inward(box.speedMillimetresPerSecond())));
    String fixed =
        RigSetupText.fixed(bench)
            + WayText.fixed(found.charFit())
            + "; "
            + RigSetupText.metered(bench);
    text.append("FIXED  ")
        .append(String.join("\n       ", Table.fold(fixed, Table.WIDTH - 7)))
        .append("\n\n");
    return text.append(corners(box)).append(alternatives()).toString();
  }

  private static String inward(Range range) {
    return Figures.inward(range.low(), range.high());
  }

  private String corners(Box box) {
    Table table = new Table("", ">start", ">hottest corner", ">coldest corner");
    row(table, box, "power, %", f -> plain(f.powerPercent()));
    row(table, box, "power, W", f -> Figures.three(f.powerWatts()));
    row(table, box, "speed, mm/s", f -> Figures.three(f.speedMillimetresPerSecond()));
    row(table, box, "dose per pass, J/cm2", f -> Figures.three(f.doseJoulesPerCm2()));
    row(
        table,
        box,
        "intensity, " + found.bench().rig().emission().intensityUnit(),
        f -> Figures.three(f.intensity()));
    row(table, box, "char risk", f -> Figures.percent(f.charRiskMean()));
    row(table, box, "  at most", f -> Figures.atMost(f.charRiskUpper()));
    row(table, box, "charred spots per m²", f -> Figures.three(found.charredSpots(f).mean()));
    row(table, box, "  at most", f -> Figures.threeUp(found.charredSpots(f).upper()));
    row(table, box, "clearing chance", f -> Figures.percent(f.clearChanceMean()));
    row(table, box, "  at least", f -> Figures.atLeast(f.clearChanceLower()));
    row(
        table,
        box,
        "net rate, cm2/min",
        f -> Figures.three(f.netAreaRateSquareCentimetresPerMinute()));
    return table.text();
  }

  private static void row(Table table, Box box, String name, Function<Forecast, String> value) {
    table.row(
        name,
        value.apply(box.start()),
        value.apply(box.hotCorner()),
        value.apply(box.coldCorner()));
  }

  private String alternatives() {
    if (found.alternatives().isEmpty()) {
      return "";
    }
    Table table = new Table(">passes", ">power, %", ">speed, mm/s", ">net rate, cm2/min");
    for (Box box : found.alternatives()) {
      table.row(
          String.valueOf(box.passes()),
          inward(box.powerPercent()),
          inward(box.speedMillimetresPerSecond()),
          Figures.three(box.start().netAreaRateSquareCentimetresPerMinute()));
    }
    return "\nWindows for other numbers of passes\n" + table.text();
  }

  private String cautionLine() {
    return "With every patch: %s. The sheet prints them in short. %s"
        .formatted(
            precautions.cautions().stream()
                .filter(Caution::always)
                .map(caution -> caution.topic().toLowerCase(Locale.ROOT))
                .collect(Collectors.joining(", ")),
            CautionText.DEFERRAL);
  }
}
