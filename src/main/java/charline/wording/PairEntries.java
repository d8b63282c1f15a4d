package charline.wording;

import charline.answer.CompareAnswer.Contender;
import charline.answer.PairsAnswer;
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
 * Pairs of patches that tell two ways of working apart as plans of the log.
 *
 * @param answer the pairs
 * @param newId gives each plan its identity
 * @param at when it is planned
 * @param by who plans it
 */
public record PairEntries(PairsAnswer answer, Supplier<UUID> newId, OffsetDateTime at, String by) {

  /** Both patches of a pair, the one to burn first before the other. */
  public List<PlannedPatch> of(Pair pair) {
    return pair.burns().stream().map(burn -> plan(pair, burn)).toList();
  }

  private Contender way(Burn burn) {
    return burn.ofFirst() ? answer.compared().first() : answer.compared().second();
  }

  private PlannedPatch plan(Pair pair, Burn burn) {
    Contender way = way(burn);
    Stratum stratum = way.subject().trials().stratum();
    CompareText words = new CompareText(answer.compared());
    return new PlannedPatch(
        newId.get(),
        "",
        stratum.family(),
        stratum.wood(),
        burn.bench().rig(),
        pair.place().board(),
        pair.place().name(),
        burn.settings(),
        way.subject().question().way().figure().or(() -> way.subject().trials().way().figure()),
        burn.passes(),
        Purpose.HOT_SIDE.word(),
        "tells %s from %s: this one %s, the other beside it"
            .formatted(
                words.first(), words.second(), burn.ofFirst() ? words.first() : words.second()),
        Optional.empty(),
        at,
        Optional.of(by),
        false,
        Optional.empty());
  }
}
