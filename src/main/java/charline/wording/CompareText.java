package charline.wording;

import static charline.quantity.Figures.three;
import static charline.wording.Table.line;

import charline.answer.CompareAnswer;
import charline.answer.CompareAnswer.Contender;
import charline.compare.Contest;
import charline.compare.Room;
import charline.model.Estimate;
import charline.model.way.Way;
import charline.quantity.Figures;
import charline.window.Requirements;
import charline.window.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import java.util.function.Function;

/**
 * Two ways of working held against each other, in words and as JSON.
 *
 * @param answer what was found
 */
public record CompareText(CompareAnswer answer) {
  /** Doses closer than this are the same at the bench: a hand keeps its speed no better. */
  private static final double SAME = 1.1;

  private static final double ALL_BUT_CERTAIN = 0.99;

  /** What the first is called: what tells it from the second. */
  public String first() {
    return name(answer.first(), answer.second());
  }

  /** What the second is called. */
  public String second() {
    return name(answer.second(), answer.first());
  }

  private static String name(Contender one, Contender other) {
    Way way = one.subject().trials().way();
    Way against = other.subject().trials().way();
    List<String> words = new ArrayList<>();
    boolean light = !one.found().stratum().emission().equals(other.found().stratum().emission());
    if (light) {
      words.add(one.found().stratum().emission().word());
    }
    if (!way.rig().equals(against.rig()) && !light) {
      words.add("rig " + way.rig().orElse("unknown"));
    }
    if (!way.figure().equals(against.figure()) && !light) {
      words.add(way.figure().map(figure -> figure.word()).orElse("no figure noted"));
    }
    if (!way.coat().tone().equals(against.coat().tone())) {
      words.add("a " + way.coat().tone().map(tone -> tone.word() + " coat").orElse("coat"));
    }
    if (way.placeOrFace() != against.placeOrFace()) {
      words.add("the " + way.placeOrFace().word());
    }
    if (!way.warmth().equals(against.warmth()) && !light) {
      words.add(way.warmth().map(warmth -> warmth.word() + " wood").orElse("no rest noted"));
    }
    if (!way.wetted().equals(against.wetted())) {
      words.add(way.wetted().orElse(false) ? "wetted" : "dry");
    }
    if (one.side().passes() != other.side().passes()) {
      words.add("work in " + Figures.passes(one.side().passes()));
    }
    return words.isEmpty() ? "the same" : String.join(", ", words);
  }

  /**
   * "Circle chars at 0.61 times (0.5 to 0.74) the dose that line does ...: line is better, 98 %."
   */
  public String sentence() {
    Contest contest = answer.contest();
    if (contest.charTakenAsAlike()) {
      return "%s clears at %s, and both are taken to char at the same dose. %s"
          .formatted(
              capitalised(first()),
              clears(contest.clearDoseRatio(), "that of " + second()),
              better());
    }
    return "%s chars at %s times (%s) the dose that %s does, and clears at %s. %s"
        .formatted(
            capitalised(first()),
            three(contest.charDoseRatio().median()),
            Figures.bounds(contest.charDoseRatio().low(), contest.charDoseRatio().high()),
            second(),
            clears(contest.clearDoseRatio(), "its dose"),
            better());
  }

  private static String clears(Estimate ratio, String dose) {
    String figures =
        "%s times (%s)".formatted(three(ratio.median()), Figures.bounds(ratio.low(), ratio.high()));
    boolean same = ratio.median() < SAME && ratio.median() > 1 / SAME;
    return same ? "about the same dose, " + figures : figures + " " + dose;
  }

  /** Which is better, and how sure that is. */
  public String better() {
    Contest contest = answer.contest();
    double chance = Math.max(contest.firstBetter(), 1 - contest.firstBetter());
    String winner = contest.firstBetter() >= 0.5 ? first() : second();
    if (!contest.reliable()) {
      return "The models could not be computed, so do not trust these figures.";
    }
    if (chance >= Contest.SURE) {
      return "%s is better, %s sure: it leaves more room between clearing and charring."
          .formatted(capitalised(winner), whole(chance));
    }
    return contest.settled()
        ? "They leave as good as the same room, so choose by speed."
        : "Not settled: %s leaves more room with a chance of %s.".formatted(winner, whole(chance));
  }

  /** A chance in whole percent, never more than it is, and never certain. */
  private static String whole(double chance) {
    return chance > ALL_BUT_CERTAIN ? "over 99 %" : (int) Math.floor(100 * chance) + " %";
  }

  /** Whether the trials allow the comparison, and what would settle it. */
  public List<String> limits() {
    Contest contest = answer.contest();
    List<String> sentences = new ArrayList<>();
    sentences.add(
        contest.boardsShared() == 0
            ? "No board carries patches of both, so a difference between boards may look like one"
                + " between the two: burn both side by side on one board."
            : "%s %s patches of both."
                .formatted(
                    Figures.boards(contest.boardsShared()),
                    contest.boardsShared() == 1 ? "carries" : "carry"));
    if (contest.charTakenAsAlike()) {
      sentences.add(
          "That both char at the same dose is an assumption of the model, which these trials do not"
              + " test: burn each to its first brown on one board and look.");
    }
    if (!contest.settled()) {
      sentences.add(
          contest.pairsToSettle().isPresent()
              ? more(contest.pairsToSettle().getAsInt())
              : "More than %d pairs would be needed to settle it, so choose by speed and by eye."
                  .formatted(Contest.MOST_PAIRS));
    }
    return sentences;
  }

  private static String more(int pairs) {
    return pairs == 1
        ? "One more pair on one board is likely to settle it, if it goes as the others did."
        : "About %d more pairs on one board each are likely to settle it, if they go on as so far."
            .formatted(pairs);
  }

  /** At what the two were compared. */
  public String asked() {
    Requirements asked = answer.first().subject().asked();
    return "Compared at %s; char risk %s, clearing chance %s, on a new board; bounds with 90 %% confidence."
        .formatted(at(), Figures.percent(asked.charRisk()), Figures.percent(asked.clearChance()));
  }

  private String at() {
    String one = at(answer.first());
    String other = at(answer.second());
    return one.equals(other) ? one : "%s for the first, %s for the second".formatted(one, other);
  }

  private static String at(Contender of) {
    OptionalDouble coat = of.side().trials().coat().thicknessMicrometres();
    return "%s %s, %s%s"
        .formatted(
            three(Math.exp(of.side().lnIntensity())),
            of.found().stratum().emission().intensityUnit(),
            Figures.passes(of.side().passes()),
            coat.isPresent() ? ", %s um of coat".formatted(three(coat.getAsDouble())) : "");
  }

  /** "latex on pine: circle against line". */
  public String title() {
    return "%s: %s against %s"
        .formatted(answer.first().found().stratum().words(), first(), second());
  }

  /** What must be known of the coats before the beam, in short. */
  public Optional<String> poison() {
    return PrecautionText.headline(answer.precautions());
  }

  /** How many patches of each were counted. */
  public String counted() {
    return "Counted: %s with %s, %s with %s."
        .formatted(
            Figures.patches(answer.first().side().ownPatches()),
            first(),
            Figures.patches(answer.second().side().ownPatches()),
            second());
  }

  /** The answer for a terminal. */
  public String text() {
    StringBuilder text = new StringBuilder();
    line(text, title());
    PrecautionText.headline(answer.precautions()).ifPresent(words -> line(text, words));
    line(text, sentence());
    limits().forEach(words -> line(text, words));
    line(text, counted());
    line(text, asked());
    text.append('\n').append(table().text());
    for (Contender contender : List.of(answer.first(), answer.second())) {
      if (contender.found().verdict() == Verdict.UNRELIABLE) {
        line(text, "MIND: " + ReasonText.of(contender.found()));
      }
    }
    PrecautionText.inBrief(answer.precautions()).forEach(caution -> line(text, caution));
    return text.toString();
  }

  /** One figure of both ways. */
  public record Row(String what, String first, String second) {}

  /** What is known of each, row by row. */
  public List<Row> rows() {
    Requirements asked = answer.first().subject().asked();
    List<Row> rows = new ArrayList<>();
    rows.add(row("room: char dose over clearing dose", Room::ratio));
    rows.add(
        row(
            "chars %s of patches at, J/cm2".formatted(Figures.percent(asked.charRisk())),
            Room::charDose));
    rows.add(
        row(
            "clears %s of patches at, J/cm2".formatted(Figures.percent(asked.clearChance())),
            Room::clearDose));
    rows.add(
        both(
            "char risk where it clears them",
            (contender, room) ->
                "%s, at most %s"
                    .formatted(
                        Figures.percent(room.charWhereCleared()),
                        Figures.atMost(room.charWhereClearedUpper()))));
    rows.add(both("window", (contender, room) -> contender.found().verdict().word()));
    rows.add(
        both(
            "net area rate there, cm2/min",
            (contender, room) ->
                rate(contender).map(rate -> Figures.significant(rate, 2)).orElse("none")));
    return rows;
  }

  private Row row(String what, Function<Room, Estimate> of) {
    return both(
        what,
        (contender, room) -> {
          Estimate e = of.apply(room);
          return "%s (%s)".formatted(three(e.median()), Figures.bounds(e.low(), e.high()));
        });
  }

  private Row both(String what, BiFunction<Contender, Room, String> of) {
    return new Row(
        what,
        of.apply(answer.first(), answer.contest().first()),
        of.apply(answer.second(), answer.contest().second()));
  }

  private Table table() {
    Table table = new Table("", ">" + first(), ">" + second());
    rows().forEach(row -> table.row(row.what(), row.first(), row.second()));
    return table;
  }

  private static Optional<Double> rate(Contender of) {
    return of.found().chosen().map(box -> box.start().netAreaRateSquareCentimetresPerMinute());
  }

  private static String capitalised(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  /** The same as JSON. */
  public Json json() {
    Contest contest = answer.contest();
    Json json =
        new Json()
            .put("stratum", WindowJson.stratum(answer.first().found().stratum()))
            .put("asked", WindowJson.asked(answer.first().subject().asked()))
            .put("a", json(answer.first(), first(), contest.first()))
            .put("b", json(answer.second(), second(), contest.second()))
            .put("char_dose_ratio", WindowJson.estimate(contest.charDoseRatio()))
            .put("char_taken_as_alike", contest.charTakenAsAlike())
            .put("clear_dose_ratio", WindowJson.estimate(contest.clearDoseRatio()))
            .put("probability_a_better", contest.firstBetter())
            .put("settled", contest.settled())
            .put("pairs_to_settle", pairs(contest))
            .put("boards_shared", contest.boardsShared())
            .put("reliable", contest.reliable())
            .put("words", sentence());
    return PrecautionText.put(json, answer.precautions());
  }

  /** Null where more pairs would be needed than anybody burns. */
  static Integer pairs(Contest contest) {
    return contest.pairsToSettle().isPresent() ? contest.pairsToSettle().getAsInt() : null;
  }

  private static Json json(Contender of, String name, Room room) {
    return new Json()
        .put("name", name)
        .put("stratum", WindowJson.stratum(of.found().stratum()))
        .put("rig", of.subject().bench().rig().name())
        .put("patches", of.side().ownPatches())
        .put("passes", of.side().passes())
        .put("verdict", of.found().verdict().word())
        .put("room_ratio", WindowJson.estimate(room.ratio()))
        .put("char_dose_j_cm2", WindowJson.estimate(room.charDose()))
        .put("clear_dose_j_cm2", WindowJson.estimate(room.clearDose()))
        .put("room", WindowJson.estimate(room.lnRoom()))
        .put("char_risk_where_cleared_mean", room.charWhereCleared())
        .atMost("char_risk_where_cleared_upper", room.charWhereClearedUpper())
        .put("area_rate_cm2_min", rate(of));
  }
}
