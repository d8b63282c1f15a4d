package charline.paper;

import charline.answer.CompareAnswer.Contender;
import charline.answer.PairsAnswer;
import charline.paper.BenchListPage.Line;
import charline.plan.PairList.Burn;
import charline.plan.PairList.Pair;
import charline.quantity.Figures;
import charline.trial.Stratum;
import charline.wording.PairsText;
import charline.wording.PlanText;
import charline.wording.SettingsText;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Pairs of patches that tell two ways of working apart as a page for the bench.
 *
 * @param answer the pairs
 * @param codes codes reserved for them, one each in the order of burning
 * @param stamp who prints it from which log, and when
 */
public record PairBenchList(PairsAnswer answer, List<String> codes, SheetStamp stamp) {
  public PairBenchList {
    codes = List.copyOf(codes);
  }

  /** The page: the same in, the same bytes out. */
  public String html() {
    PairsText words = new PairsText(answer);
    List<Stratum> strata = contenders().map(way -> way.found().stratum()).distinct().toList();
    List<Burn> burns =
        answer.list().pairs().stream().flatMap(pair -> pair.burns().stream()).toList();
    int most = burns.stream().mapToInt(Burn::passes).max().orElse(1);
    return new BenchListPage(
            "%s on %s: %s beside %s"
                .formatted(
                    strata.get(0).family(), strata.get(0).wood(), words.first(), words.second()),
            "Rig %s, %s, on %s"
                .formatted(
                    joined(burns.stream().map(burn -> burn.bench().rig().name())),
                    joined(strata.stream().map(BenchListPage::light)),
                    PlanText.site(answer.list().site())),
            BenchListPage.poison(answer.compared().precautions()),
            words.sentence(),
            words.how(),
            strata.stream()
                .flatMap(stratum -> StandingCautions.warning(List.of(), stratum).stream())
                .findFirst()
                .orElse(""),
            BenchListPage.before(
                joined(strata.stream().map(s -> String.valueOf(s.wavelengthNanometres())))),
            BenchListPage.cautions(answer.compared().precautions()),
            joined(burns.stream().map(burn -> BenchListPage.fixed(burn.bench()))),
            BenchListPage.heads(most),
            rows(words, most),
            stamp.inShort())
        .html();
  }

  private Stream<Contender> contenders() {
    return Stream.of(answer.compared().first(), answer.compared().second());
  }

  private static String joined(Stream<String> words) {
    return words.distinct().collect(Collectors.joining(" and "));
  }

  private List<Line> rows(PairsText words, int most) {
    List<Line> rows = new ArrayList<>();
    for (Pair pair : answer.list().pairs()) {
      for (Burn burn : pair.burns()) {
        rows.add(
            new Line(
                codes.get(rows.size()),
                pair.place().name(),
                pair.place().isFresh(),
                SettingsText.power(burn.settings().power()),
                BenchListPage.speed(burn.settings()),
                Figures.significant(burn.setting().doseJoulesPerCm2(), 3) + " J/cm²",
                words.reason(pair, burn),
                "",
                BenchListPage.risk(burn.charRiskMean(), burn.charRiskUpper()),
                "",
                BenchListPage.boxes(burn.passes(), most)));
      }
    }
    return rows;
  }
}
