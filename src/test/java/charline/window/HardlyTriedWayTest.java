package charline.window;

import static org.assertj.core.api.Assertions.assertThat;

import charline.exposure.Figure;
import charline.model.Event;
import charline.model.Trials;
import charline.model.way.Way;
import charline.shops.Scenario;
import charline.shops.ShopBench;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.ways.TwoFigures;
import charline.wording.ReasonText;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Where six circles stand beside twelve lines, what lines did says little of how hot circles may
 * go: a window for circles reaches no hotter than two circles that came through.
 */
class HardlyTriedWayTest {
  private static final TwoFigures.Kind CHARS_SOONER =
      new TwoFigures.Kind("circles char at 1/1.8", -Math.log(1.8), 0, 3);

  private static Recommendation recommend(Trials trials) {
    RigSetup bench = RigSetup.of(ShopBench.RIG, trials.patches(), ShopBench.DAY);
    return WindowFinder.withDefaults().recommend(trials, bench, Requirements.USUAL);
  }

  private static TwoFigures shop(int number) {
    return TwoFigures.draw(CHARS_SOONER, Scenario.usual(), number);
  }

  private static boolean cameThrough(Patch patch, Forecast corner) {
    Optional<Figure> circle = Optional.of(Figure.CIRCLE);
    return Way.of(patch).figure().equals(circle)
        && patch.exposure().doseJoulesPerCm2() >= corner.doseJoulesPerCm2() * (1 - 1e-9)
        && patch.exposure().intensity() >= corner.intensity() * 0.97
        && patch.readings().stream()
            .filter(r -> !Event.CHAR.shownBy(r.outcome(), false))
            .mapToInt(Reading::passes)
            .anyMatch(passes -> passes >= corner.passes());
  }

  @ParameterizedTest
  @ValueSource(ints = {26, 27, 28})
  void two_circles_came_through_each_hot_corner_of_circles(int number) {
    Recommendation answer = recommend(shop(number).asking(Figure.CIRCLE));
    Stream.concat(answer.chosen().stream(), answer.alternatives().stream())
        .forEach(
            box ->
                assertThat(
                        answer.patches().stream()
                            .filter(p -> cameThrough(p, box.hotCorner()))
                            .count())
                    .as("%s", box.hotCorner())
                    .isGreaterThanOrEqualTo(2));
  }

  @Test
  void the_answer_says_how_few_circles_there_are() {
    assertThat(ReasonText.of(recommend(shop(26).asking(Figure.CIRCLE))))
        .contains(
            "Only 6 of 18 patches were burned this way (the same rig, figure, place, rest and"
                + " wetting), so a window goes no hotter than at least 2 of them that came through"
                + " without char.");
  }

  @Test
  void lines_have_patches_enough_of_their_own() {
    SupportingPatches lines = new SupportingPatches(shop(0).asking(Figure.LINE));
    assertThat(lines.lnHottest(0, 1)).isEqualTo(Double.POSITIVE_INFINITY);
    assertThat(lines.hardlyTried()).isEmpty();
  }
}
