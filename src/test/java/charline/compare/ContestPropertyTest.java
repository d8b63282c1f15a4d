package charline.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.exposure.Figure;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.ModelFit;
import charline.model.Trials;
import charline.shops.Scenario;
import charline.ways.TwoFigures;
import charline.window.Requirements;
import org.junit.jupiter.api.Test;

class ContestPropertyTest {
  private static final Requirements ASKED = Requirements.USUAL;
  private static final Fitter FITTER = Fitter.withDefaults();

  private static Side side(Trials trials, ModelFit charring, ModelFit clearing, int passes) {
    return new Side(trials, charring, clearing, passes, trials.lnReferenceIntensity());
  }

  private record Two(Side circle, Side line) {
    static Two of(double lnChar, int number) {
      TwoFigures shop =
          TwoFigures.draw(new TwoFigures.Kind("contest", lnChar, 0, 2), Scenario.usual(), number);
      Trials lines = shop.asking(Figure.LINE);
      Trials circles = shop.asking(Figure.CIRCLE);
      ModelFit charring = FITTER.fit(lines, Event.CHAR);
      ModelFit clearing = FITTER.fit(lines, Event.CLEARING);
      return new Two(
          side(circles, charring.inWay(circles.way()), clearing.inWay(circles.way()), 2),
          side(lines, charring, clearing, 2));
    }
  }

  @Test
  void turned_round_it_says_the_same() {
    Two two = Two.of(-0.6, 1);
    Contest one = Contest.of(two.circle(), two.line(), ASKED);
    Contest other = Contest.of(two.line(), two.circle(), ASKED);
    assertThat(one.firstBetter() + other.firstBetter()).isCloseTo(1, within(1e-3));
    assertThat(one.charDoseRatio().median() * other.charDoseRatio().median())
        .isCloseTo(1, within(1e-3));
    assertThat(one.charDoseRatio().low() * other.charDoseRatio().high()).isCloseTo(1, within(1e-3));
    assertThat(one.first().ratio()).isEqualTo(other.second().ratio());
    assertThat(one.boardsShared()).isEqualTo(3);
  }

  @Test
  void a_way_is_no_better_than_itself() {
    Side line = Two.of(0, 2).line();
    Contest contest = Contest.of(line, line, ASKED);
    assertThat(contest.charDoseRatio().low()).isEqualTo(1);
    assertThat(contest.charDoseRatio().high()).isEqualTo(1);
    assertThat(contest.settled()).as("that neither is better").isTrue();
  }

  /** As the figure shifts both doses alike in every draw, the ratio is the shift that was found. */
  @Test
  void the_ratio_of_doses_is_the_shift() {
    Two two = Two.of(-0.6, 3);
    Contest contest = Contest.of(two.circle(), two.line(), ASKED);
    assertThat(contest.charDoseRatio().median())
        .isCloseTo(two.line().charring().wayEffects().get(0).factor().median(), within(0.01));
  }

  @Test
  void more_passes_take_less_dose_for_either_event() {
    Two two = Two.of(0, 4);
    Side thrice = side(two.line().trials(), two.line().charring(), two.line().clearing(), 3);
    Contest contest = Contest.of(thrice, two.line(), ASKED);
    assertThat(contest.charDoseRatio().high()).isLessThan(1);
    assertThat(contest.clearDoseRatio().high()).isLessThan(1);
  }

  @Test
  void a_clear_difference_is_settled_and_a_small_one_asks_for_pairs() {
    int settled = 0;
    int right = 0;
    for (int number = 10; number < 16; number++) {
      Two two = Two.of(-1.2, number);
      Contest contest = Contest.of(two.circle(), two.line(), ASKED);
      settled += contest.settled() ? 1 : 0;
      right += contest.firstBetter() < 0.5 ? 1 : 0;
      assertThat(contest.pairsToSettle().orElse(Contest.MOST_PAIRS) == 0)
          .isEqualTo(contest.settled());
    }
    assertThat(settled).as("of six with circles at 0.3 of the dose").isGreaterThanOrEqualTo(4);
    assertThat(right).isEqualTo(6);
  }
}
