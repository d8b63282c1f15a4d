package charline.wording;

import static charline.wording.Table.line;

import charline.answer.PairsAnswer;
import charline.compare.Contest;
import charline.plan.PairList.Burn;
import charline.plan.PairList.Pair;
import charline.quantity.Figures;
import charline.trial.Board;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Pairs of patches that tell two ways of working apart, in words and as JSON.
 *
 * @param answer the pairs and what the trials say so far
 * @param codes codes reserved for them in the order of burning; none where none are
 */
public record PairsText(PairsAnswer answer, List<String> codes) {
  public PairsText {
    codes = List.copyOf(codes);
  }

  /** Pairs without codes. */
  public PairsText(PairsAnswer answer) {
    this(answer, List.of());
  }

  /** The code of a patch. */
  private Optional<String> code(Pair pair, int burn) {
    return codes.isEmpty()
        ? Optional.empty()
        : Optional.of(codes.get(2 * (pair.number() - 1) + burn));
  }

  /** What the first way is called. */
  public String first() {
    return compared().first();
  }

  /** What the second way is called. */
  public String second() {
    return compared().second();
  }

  /** What the trials say of the two so far. */
  public String sentence() {
    return compared().sentence();
  }

  private CompareText compared() {
    return new CompareText(answer.compared());
  }

  /** What the way of a patch is called. */
  public String name(Burn burn) {
    return burn.ofFirst() ? compared().first() : compared().second();
  }

  /** Why a patch is burned: "pair 2: circle, beside line". */
  public String reason(Pair pair, Burn burn) {
    return "pair %d: %s, beside %s"
        .formatted(
            pair.number(), name(burn), burn.ofFirst() ? compared().second() : compared().first());
  }

  /** The list for a terminal. */
  public String text() {
    StringBuilder text = new StringBuilder();
    CompareText words = compared();
    line(text, words.title());
    PrecautionText.headline(answer.compared().precautions())
        .ifPresent(headline -> line(text, headline));
    line(text, words.sentence());
    words.limits().forEach(sentence -> line(text, sentence));
    if (answer.list().pairs().isEmpty()) {
      line(text, "Nothing is burned on the piece to compare two ways; take an offcut.");
      return text.toString();
    }
    line(text, "How: " + how());
    text.append('\n');
    answer.list().pairs().forEach(pair -> pair(text, pair));
    PrecautionText.inBrief(answer.compared().precautions()).forEach(caution -> line(text, caution));
    line(text, CautionText.before("patch"));
    return text.toString();
  }

  /** How to go about it. */
  public String how() {
    return "Burn both patches of a pair side by side on one board, in this order, and judge each cold and wiped after every pass. At the first brown stop that patch. About %d of the %d brown before they are done: that is what tells the two apart."
        .formatted(expectedBrown(), 2 * answer.list().pairs().size());
  }

  /** Both patches of a pair, a sentence each, the one to burn first before the other. */
  public List<String> words(Pair pair) {
    return IntStream.range(0, pair.burns().size())
        .mapToObj(
            k -> code(pair, k).map(code -> code + "  ").orElse("") + words(pair.burns().get(k)))
        .toList();
  }

  private String words(Burn burn) {
    return "%s: %s, up to %s, %s J/cm2 per pass; char risk %s, at most %s; clears %s"
        .formatted(
            name(burn),
            SettingsText.settings(burn.settings()),
            Figures.passes(burn.passes()),
            Figures.three(burn.setting().doseJoulesPerCm2()),
            Figures.percent(burn.charRiskMean()),
            Figures.atMost(burn.charRiskUpper()),
            Figures.percent(burn.clearChanceMean()));
  }

  private long expectedBrown() {
    return Math.round(
        answer.list().pairs().stream()
            .flatMap(pair -> pair.burns().stream())
            .mapToDouble(Burn::charRiskMean)
            .sum());
  }

  private void pair(StringBuilder text, Pair pair) {
    text.append(Table.hanging("%3d  ".formatted(pair.number()), "on " + pair.place().name()));
    words(pair).forEach(words -> text.append(Table.hanging("     ", words)));
  }

  /** The same as JSON. */
  public Json json() {
    Contest contest = answer.compared().contest();
    return PrecautionText.put(
        new Json()
            .put("compared", compared().json())
            .put("pairs_to_settle", CompareText.pairs(contest))
            .put("on", answer.list().site().word())
            .put("pairs", answer.list().pairs().stream().map(this::json).toList()),
        answer.compared().precautions());
  }

  private Json json(Pair pair) {
    List<Json> patches =
        IntStream.range(0, pair.burns().size())
            .mapToObj(k -> json(code(pair, k), pair.burns().get(k)))
            .toList();
    return new Json()
        .put("number", pair.number())
        .put("board", pair.place().board().map(Board::name))
        .put("place", pair.place().name())
        .put("patches", patches);
  }

  private Json json(Optional<String> code, Burn burn) {
    Json json =
        new Json()
            .put("patch", code)
            .put("way", name(burn))
            .put("rig", burn.bench().rig().name())
            .put("passes", burn.passes());
    SettingsJson.put(json, burn.settings());
    return json.put("dose_j_cm2", burn.setting().doseJoulesPerCm2())
        .put("char_risk_mean", burn.charRiskMean())
        .atMost("char_risk_upper", burn.charRiskUpper())
        .put("clear_chance_mean", burn.clearChanceMean());
  }
}
