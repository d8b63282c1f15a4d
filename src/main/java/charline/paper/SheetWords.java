package charline.paper;

import charline.model.way.Trait;
import charline.model.way.Way;
import charline.paper.SheetPage.JudgedMark;
import charline.paper.SheetPage.Line;
import charline.paper.SheetPage.Refusal;
import charline.quantity.Figures;
import charline.trial.Caution;
import charline.trial.Patch;
import charline.trial.Stratum;
import charline.window.Recommendation;
import charline.window.Verdict;
import charline.wording.BriefList;
import charline.wording.NextStepText;
import charline.wording.PieceText;
import charline.wording.ReasonText;
import charline.wording.WayText;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Puts a sheet into words. */
final class SheetWords {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("yyyy-MM-dd", Locale.ROOT);
  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm xxx", Locale.ROOT);

  private final WindowSheet sheet;
  private final Recommendation recommendation;
  private final SetupWords bench;

  SheetWords(WindowSheet sheet) {
    this.sheet = sheet;
    recommendation = sheet.recommendation();
    bench = new SetupWords(recommendation.bench(), WayText.fixed(recommendation.charFit()));
  }

  SheetPage page(Paper paper) {
    Stratum stratum = recommendation.stratum();
    Verdict verdict = recommendation.verdict();
    boolean window = verdict == Verdict.WINDOW;
    List<Caution> cautions = StandingCautions.completing(sheet.cautions(), stratum);
    SheetPage withoutMap =
        new SheetPage(
            verdict.word(),
            stratum.family()
                + " on "
                + (stratum.wood().equals(Stratum.ANY_WOOD) ? "any wood" : stratum.wood())
                + coat()
                + recommendation.piece().map(piece -> ", for " + piece.name()).orElse(""),
            "%s, %d nm, %s".formatted(bench.light(), stratum.wavelengthNanometres(), bench.rig()),
            sheet.before().map(words -> "Before the beam: " + words + "."),
            StandingCautions.warning(sheet.cautions(), stratum),
            WindowSheet.box(recommendation).map(bench::startPanel),
            window ? Optional.empty() : Optional.of(refusal(verdict)),
            recommendation
                .map()
                .map(
                    m ->
                        NoWindowWords.mapTitle(
                            verdict, Figures.count(m.passes(), "pass", "passes")))
                .orElse("No map: the models could not be fitted to these trials."),
            Optional.empty(),
            sure(),
            judging(Optional.empty()),
            stops(),
            cautions,
            StandingCautions.rulesOf(cautions),
            validity(),
            recommendation.piece().isPresent()
                ? "Any other board: not this sheet."
                : "New board: one control patch first.",
            origin(),
            window ? "Released for work by" : "Seen by",
            false);
    PageRoom room = PageRoom.of(withoutMap, paper);
    Optional<MapPicture> map = MapPicture.of(recommendation, room.plotHeight());
    return withoutMap.with(map, room.fitting(withoutMap.sure()), judging(map), room.tight());
  }

  /** Which coat and way of working the sheet is for, where trials hold more than one. */
  private String coat() {
    StringBuilder words = new StringBuilder();
    recommendation
        .clearingFit()
        .ifPresent(
            fit ->
                Arrays.stream(Trait.values())
                    .filter(fit.ways()::has)
                    .flatMap(trait -> word(trait, fit.way()).stream())
                    .forEach(word -> words.append(", ").append(word)));
    return words.toString();
  }

  private static Optional<String> word(Trait trait, Way way) {
    return switch (trait) {
      case TONE -> way.coat().tone().map(tone -> tone.word() + " coat");
      case THICKNESS ->
          Optional.of(
              Figures.significant(way.coat().thicknessMicrometres().getAsDouble(), 2) + " µm");
      case FIGURE -> way.figure().map(figure -> "figure " + figure.word());
      case PLACE -> way.place().map(place -> place.word());
      case WARMTH -> way.warmth().map(warmth -> "wood " + warmth.word());
      case WETTED -> way.wetted().filter(wet -> wet).map(wet -> "wetted");
      case RIG, PULSE, MOISTURE -> Optional.empty();
    };
  }

  private Refusal refusal(Verdict verdict) {
    return new Refusal(
        NoWindowWords.headline(verdict),
        ReasonText.of(recommendation),
        sheet
            .next()
            .map(BriefList::paragraph)
            .orElseGet(() -> NextStepText.of(recommendation.nextSteps())),
        NoWindowWords.rules(verdict));
  }

  /** The weightiest first: where the page is full, the last go. */
  private List<Line> sure() {
    ConfidenceWords words = new ConfidenceWords(recommendation);
    List<Line> lines = new ArrayList<>(words.lines(sheet.job()));
    sheet
        .piece()
        .ifPresent(piece -> lines.add(0, new Line("This piece", PieceText.inShort(piece))));
    if (recommendation.verdict() == Verdict.WINDOW) {
      PieceText.standing(recommendation)
          .ifPresent(standing -> lines.add(new Line("Standing", standing)));
      lines.add(new Line("Next", NextStepText.of(recommendation.nextSteps())));
      recommendation.alternatives().stream().limit(3).forEach(b -> lines.add(bench.otherPasses(b)));
      words.evenChance().ifPresent(lines::add);
      lines.add(new Line("Why", ReasonText.of(recommendation)));
    } else {
      lines.add(new Line("Bench", bench.fixed() + "."));
      words.evenChance().ifPresent(lines::add);
    }
    lines.removeIf(l -> l.text().isBlank());
    return lines;
  }

  private static List<JudgedMark> judging(Optional<MapPicture> map) {
    return List.of(
        judged(PatchSign.CLEAN, "bare wood, unharmed", map),
        judged(PatchSign.TINT, "colour left in the grain", map),
        judged(PatchSign.CHAR, "dark that stays; soot wipes off", map),
        judged(PatchSign.RESIDUE, "finish left on top or in pores", map));
  }

  private static JudgedMark judged(PatchSign sign, String text, Optional<MapPicture> map) {
    return new JudgedMark(sign, map.map(m -> String.valueOf(m.count(sign))).orElse(""), text);
  }

  private static List<String> stops() {
    return List.of(
        "Glow, flame, sparks, lasting smoke.",
        "Brown that stays. Never burn it off.",
        "Pitch bubbles, knot darkens, veneer lifts.",
        "Another coat, colour, filler or wood shows.",
        "Hand halts or falls below its range.",
        "Weak beam, weak extraction, bare eyes.");
  }

  private List<String> validity() {
    return List.of(
        "a new lens, spot, stand-off, rate, pulse, width",
        bench.powerCheck(),
        "a new or cleaned protective window",
        "another wood, finish or coat stack",
        "new patches in the log: print again");
  }

  private List<Line> origin() {
    List<Line> lines = new ArrayList<>();
    if (!recommendation.patches().isEmpty()) {
      lines.add(
          new Line("Trials", PatchCodes.words(recommendation.patches()) + ", burned " + burned()));
    }
    lines.add(new Line("Log", sheet.stamp().logName()));
    lines.add(
        new Line(
            "Printed",
            MOMENT.format(sheet.stamp().printedAt())
                + sheet.stamp().by().map(by -> " by " + by).orElse("")
                + ", charline "
                + sheet.stamp().programVersion()));
    return lines;
  }

  private String burned() {
    List<OffsetDateTime> moments =
        recommendation.patches().stream()
            .map(Patch::burnedAt)
            .sorted(Comparator.naturalOrder())
            .toList();
    String first = DAY.format(moments.get(0));
    String last = DAY.format(moments.get(moments.size() - 1));
    return first.equals(last) ? first : first + " to " + last;
  }
}
