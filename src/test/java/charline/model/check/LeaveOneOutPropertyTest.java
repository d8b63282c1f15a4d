package charline.model.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.exposure.Exposure;
import charline.model.Draw;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.ModelFit;
import charline.model.Trials;
import charline.stat.distribution.Logistic;
import charline.trial.Patch;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class LeaveOneOutPropertyTest {
  private static final Fitter FITTER = Fitter.withDefaults();

  /** Where no patch shares a board, leaving one out is asking for a new board. */
  @ParameterizedTest
  @ValueSource(longs = {3, 4})
  void a_patch_alone_on_its_board_is_given_what_a_fit_without_it_gives_a_new_board(long seed) {
    Trials trials = new InventedStratum(seed).burn(9, 9);
    FitChecks checks = new FitChecker(FITTER).check(trials, FITTER.fit(trials, Event.CHAR));
    for (int i = 0; i < 9; i++) {
      List<Patch> others = new ArrayList<>(trials.patches());
      Patch out = others.remove(i);
      Trials without = new Trials(trials.stratum(), others, false);
      ModelFit fit = FITTER.fit(without, Event.CHAR);
      Exposure exposure = out.exposure();
      double bySeen =
          fit.posterior()
              .mean(
                  fit.posterior()
                      .newBoardChance(
                          exposure.doseJoulesPerCm2(),
                          exposure.intensity(),
                          out.lastReading().passes()));
      PatchCheck check = checks.patches().get(i);
      boolean charred = out.lastReading().outcome().charred();
      double ours = charred ? check.sooner() + check.asSeen() : check.sooner();
      assertThat(ours).as(out.code()).isCloseTo(bySeen, within(0.02));
    }
  }

  /** Two patches of one board under one draw, against a plain sum over the board's shift. */
  @Test
  void within_a_board_the_ratio_is_that_of_the_integrals() {
    Draw draw = new Draw(0, 3, 0.4, 0.7, 0.3, 0.25);
    ObservedPatch left = new ObservedPatch("P-1", 0, 2.9, 0.1, new int[] {1, 2, 4}, true);
    ObservedPatch other = new ObservedPatch("P-2", 0, 2.7, -0.1, new int[] {1, 3}, false);
    BoardUnderDraw board = new BoardUnderDraw(List.of(left, other));
    board.fill(draw);
    double[] unseen = new double[3];
    double log = board.leaveOut(0, unseen);
    double both = 0;
    double one = 0;
    double notByTwo = 0;
    for (double x = -8; x <= 8; x += 0.001) {
      double weight = Math.exp(-x * x / 2);
      double alone = weight * (1 - by(draw, other, 3, x));
      one += alone;
      both += alone * (by(draw, left, 4, x) - by(draw, left, 2, x));
      notByTwo += alone * (1 - by(draw, left, 2, x));
    }
    assertThat(Math.exp(log)).isCloseTo(both / one, within(1e-6));
    assertThat(unseen[1]).isCloseTo(notByTwo / one, within(1e-6));
  }

  private static double by(Draw draw, ObservedPatch patch, int passes, double x) {
    double margin = draw.margin(patch.lnDose(), patch.lnIntensity(), passes, patch.wayStep());
    return Logistic.cdf((margin - draw.omega() * x) / draw.sigma());
  }

  /** Over strata that follow the model the chances given must come true as often as they say. */
  @ParameterizedTest
  @EnumSource(Event.class)
  void chances_given_to_readings_come_true_as_often_as_they_say(Event event) {
    double[] seen = new double[4];
    double[] given = new double[4];
    double[] spread = new double[4];
    for (long seed = 100; seed < 130; seed++) {
      Trials trials = new InventedStratum(seed).burn(18, 3);
      FitChecks checks = new FitChecker(FITTER).check(trials, FITTER.fit(trials, event));
      for (CalibrationBin bin : checks.calibration()) {
        int b = (int) Math.round(bin.from() * 10) / 2; // 0, 0.2, 0.5, 0.8
        b = b == 4 ? 3 : b;
        seen[b] += bin.seen();
        given[b] += bin.readings() * bin.predicted();
        spread[b] += bin.readings() * bin.predicted() * (1 - bin.predicted());
      }
    }
    for (int b = 0; b < 4; b++) {
      assertThat(seen[b]).as("bin " + b).isCloseTo(given[b], within(3 * Math.sqrt(spread[b])));
    }
  }
}
