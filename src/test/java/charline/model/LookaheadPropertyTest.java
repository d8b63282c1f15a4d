package charline.model;

import static org.assertj.core.api.Assertions.assertThat;

import charline.shops.Scenario;
import charline.shops.Shop;
import charline.trial.Board;
import charline.trial.Patch;
import charline.trial.Stratum;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A patch to come on a board is foreseen by what the board has shown. */
class LookaheadPropertyTest {
  private static final int DRAWS = 500;

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3})
  void boards_that_charred_sooner_are_expected_to_char_sooner(int number) {
    List<Patch> patches =
        Shop.draw(Scenario.usual().withBoardSpread(0.5).burning(36, 3), number).patches();
    Trials trials = new Trials(Stratum.of(patches.get(0)), patches, false);
    ModelFit fit = Fitter.withDefaults().fit(trials, Event.CHAR);
    Lookahead ahead = Lookahead.of(fit, Optional.of(trials), DRAWS);
    Map<Board, Long> charred =
        patches.stream()
            .collect(
                Collectors.groupingBy(
                    Patch::board,
                    Collectors.filtering(p -> trials.shows(p, Event.CHAR), Collectors.counting())));
    Comparator<Map.Entry<Board, Long>> byCount = Map.Entry.comparingByValue();
    Board soonest = charred.entrySet().stream().max(byCount).orElseThrow().getKey();
    Board latest = charred.entrySet().stream().min(byCount).orElseThrow().getKey();

    double lnDose = fit.tau().median();
    double anywhere = chance(ahead, trials, lnDose, Optional.empty());
    assertThat(chance(ahead, trials, lnDose, Optional.of(soonest))).isGreaterThan(anywhere);
    assertThat(chance(ahead, trials, lnDose, Optional.of(latest))).isLessThan(anywhere);
  }

  private static double chance(
      Lookahead ahead, Trials trials, double lnDose, Optional<Board> board) {
    return ahead.prospect(lnDose, trials.lnReferenceIntensity(), 1, board.map(Board::id)).chance();
  }
}
