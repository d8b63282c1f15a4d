package charline.wording;

import charline.answer.CompareAnswer.Contender;
import charline.answer.PairsAnswer;
import charline.exposure.Figure;
import charline.log.PlannedPatch;
import charline.plan.PairList.Burn;
import charline.plan.PairList.Pair;
import charline.plan.Purpose;
import charline.trial.Stratum;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;

/**
 * Pairs of patches as plans of the log, which gives them their codes.
 *
 * @param answer the pairs
 * @param newId gives each plan its identity
 * @param at when they are planned
 * @param by who plans them
 */
public record PairEntries(PairsAnswer answer, Supplier<UUID> newId, OffsetDateTime at, String by) {
  /** Both patches of each pair, in the order of burning. */
  public List<PlannedPatch> all() {
    return answer.list().pairs().stream().flatMap(pair -> of(pair).stream()).toList();
  }

  /** Both patches of a pair, the one to burn first before the other. */
  public List<PlannedPatch> of(Pair pair) {
    return pair.burns().stream().map(burn -> plan(pair, burn)).toList();
  }

  private PlannedPatch plan(Pair pair, Burn burn) {
    PairsText words = new PairsText(answer);
    Contender way = burn.ofFirst() ? answer.compared().first() : answer.compared().second();
    Stratum stratum = way.found().stratum();
    Optional<Figure> figure =
        way.subject().question().way().figure().or(() -> way.subject().trials().way().figure());
    return new PlannedPatch(
        newId.get(),
        "",
        stratum.family(),
        stratum.wood(),
        burn.bench().rig(),
        pair.place().board(),
        pair.place().name(),
        burn.settings(),
        figure,
        burn.passes(),
        Purpose.TELL_APART.word(),
        words.reason(pair, burn),
        Optional.empty(),
        at,
        Optional.of(by),
        false,
        Optional.empty());
  }
}
