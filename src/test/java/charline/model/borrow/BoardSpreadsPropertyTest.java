package charline.model.borrow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.model.Event;
import charline.model.Fitter;
import charline.model.LearnedSpread;
import charline.model.ModelFit;
import charline.model.SpreadPrior;
import charline.model.Trials;
import charline.shops.Scenario;
import charline.shops.Shop;
import charline.trial.Patch;
import charline.trial.Stratum;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a log's other strata tell of how much boards differ. */
class BoardSpreadsPropertyTest {
  private static final List<String> FAMILIES = List.of("alkyd", "shellac", "varnish", "stain");

  private static Trials trials(String family, double omega, int number) {
    Scenario scenario =
        Scenario.usual().withBoardSpread(omega).burning(24, 6).named("spreads " + family, "");
    List<Patch> patches = Shop.draw(scenario, number).patches();
    Stratum burned = Stratum.of(patches.get(0));
    return new Trials(
        new Stratum(family, burned.wood(), burned.emission(), burned.wavelengthNanometres()),
        patches,
        false);
  }

  private static List<Trials> others(double omega) {
    List<Trials> all = new ArrayList<>();
    for (int k = 0; k < FAMILIES.size(); k++) {
      all.add(trials(FAMILIES.get(k), omega, k));
    }
    return all;
  }

  private static LearnedSpread learned(List<Trials> log, Stratum wanted, Event event) {
    SpreadPrior prior =
        new BoardSpreads(Fitter.withDefaults(), log)
            .fitterFor(wanted)
            .priors()
            .of(event, wanted.emission())
            .omega();
    return (LearnedSpread) prior;
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.1, 0.25, 0.5})
  void strata_that_agree_tell_a_level_near_theirs(double omega) {
    Stratum wanted = trials("latex", 0.1, 9).stratum();
    LearnedSpread learned = learned(others(omega), wanted, Event.CHAR);
    assertThat(learned.strata()).isEqualTo(4);
    assertThat(learned.quantile(0.1)).isLessThan(omega);
    assertThat(learned.quantile(0.9)).isGreaterThan(omega);
    assertThat(learned.quantile(0.95) / learned.quantile(0.05))
        .isLessThan(
            LearnedSpread.OF_EMPTY_LOG.quantile(0.95) / LearnedSpread.OF_EMPTY_LOG.quantile(0.05));
  }

  @Test
  void its_own_trials_tell_a_stratum_nothing_beforehand() {
    Trials own = trials("latex", 0.5, 9);
    assertThat(learned(List.of(own), own.stratum(), Event.CHAR))
        .isEqualTo(LearnedSpread.OF_EMPTY_LOG);
  }

  @Test
  void a_stratum_on_one_board_tells_nothing() {
    List<Patch> all = trials("alkyd", 0.2, 3).patches();
    Trials one =
        trials("alkyd", 0.2, 3)
            .with(
                all.stream().filter(p -> p.board().id().equals(all.get(0).board().id())).toList());
    assertThat(learned(List.of(one), trials("latex", 0.1, 9).stratum(), Event.CHAR))
        .isEqualTo(LearnedSpread.OF_EMPTY_LOG);
  }

  /**
   * The chance of a stratum's trials under a level is what its posterior under one prior says of
   * another: so the level found must not hang on the prior that the stratum was fitted under.
   */
  @Test
  void what_is_learned_hangs_on_the_trials_and_not_on_the_prior_they_were_fitted_under() {
    Trials other = trials("alkyd", 0.3, 5);
    LearnedSpread narrow = LearnedSpread.beforeAnyTrial(0.15, Math.log(1.5));
    Fitter usual = Fitter.withDefaults();
    Fitter tight = usual.with(usual.priors().with(Event.CHAR, narrow));
    ModelFit one = usual.fit(other, Event.CHAR);
    ModelFit two = tight.fit(other, Event.CHAR);
    LearnedSpread none = LearnedSpread.OF_EMPTY_LOG;
    LearnedSpread a = none.after(none.evidence(one, none));
    LearnedSpread b = none.after(none.evidence(two, narrow));
    for (double p : new double[] {0.1, 0.5, 0.9}) {
      assertThat(b.quantile(p)).isCloseTo(a.quantile(p), within(0.06 * a.quantile(p)));
    }
  }
}
