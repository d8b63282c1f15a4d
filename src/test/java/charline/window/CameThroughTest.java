package charline.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import charline.exposure.Figure;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.ReferenceStrata;
import charline.model.Trials;
import charline.paper.CellState;
import charline.shops.Scenario;
import charline.shops.ShopBench;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.ways.TwoFigures;
import charline.wording.ReasonText;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A window goes no hotter than some patches of its own way that came through, whatever the models
 * promise.
 */
class CameThroughTest {
  private static final Trials LATEX = ReferenceStrata.trials("latex", "pine");

  private static Trials circles(int shop) {
    return TwoFigures.draw(
            new TwoFigures.Kind("circles char at 1/1.8", -Math.log(1.8), 0, 3),
            Scenario.usual(),
            shop)
        .asking(Figure.CIRCLE);
  }

  private static Recommendation recommend(Trials trials) {
    RigSetup bench =
        RigSetup.of(RigSetup.mostUsedRig(trials.patches()), trials.patches(), ShopBench.DAY);
    return WindowFinder.withDefaults().recommend(trials, bench, Requirements.USUAL);
  }

  private static boolean cameThrough(Patch patch, Forecast corner) {
    return patch.exposure().doseJoulesPerCm2() >= corner.doseJoulesPerCm2() * (1 - 1e-9)
        && patch.exposure().intensity() >= corner.intensity() * 0.97
        && patch.readings().stream()
            .filter(r -> !Event.CHAR.shownBy(r.outcome(), false))
            .mapToInt(Reading::passes)
            .anyMatch(passes -> passes >= corner.passes());
  }

  private static long unharmed(Trials trials, Forecast corner) {
    return trials.inSameWay().stream().filter(p -> cameThrough(p, corner)).count();
  }

  private static Stream<Box> boxes(Recommendation answer) {
    return Stream.concat(answer.chosen().stream(), answer.alternatives().stream());
  }

  @Test
  void four_patches_came_through_each_hot_corner() {
    Recommendation answer = recommend(LATEX);
    assertThat(boxes(answer)).isNotEmpty();
    boxes(answer)
        .forEach(
            box ->
                assertThat(unharmed(LATEX, box.hotCorner()))
                    .as("%s", box.hotCorner())
                    .isGreaterThanOrEqualTo(4));
  }

  @ParameterizedTest
  @ValueSource(ints = {26, 27, 28})
  void of_six_circles_beside_twelve_lines_two_came_through(int shop) {
    Trials circles = circles(shop);
    boxes(recommend(circles))
        .forEach(
            box ->
                assertThat(unharmed(circles, box.hotCorner()))
                    .as("%s", box.hotCorner())
                    .isGreaterThanOrEqualTo(2));
  }

  @Test
  void one_in_five_has_to_come_through_and_never_more_than_four() {
    assertThat(List.of(circles(0), LATEX))
        .extracting(trials -> new SupportingPatches(trials))
        .extracting(SupportingPatches::inSameWay, SupportingPatches::unharmedWanted)
        .containsExactly(tuple(6, 2), tuple(LATEX.patches().size(), 4));
  }

  @Test
  void where_too_few_came_through_the_answer_says_so() {
    assertThat(ReasonText.of(List.of(new Reason.TooFewCameThrough(4, 18, 18))))
        .isEqualTo(
            "The models alone promise a window: fewer than 4 of the 18 patches came through its"
                + " settings without char.");
    assertThat(ReasonText.of(List.of(new Reason.TooFewCameThrough(2, 6, 18))))
        .contains(
            "fewer than 2 of the 6 patches burned this way (the same rig, figure, place, rest and"
                + " wetting)");
  }

  @Test
  void the_risk_of_a_setting_says_that_the_models_alone_promise_it() {
    LiveForecast live = LiveForecast.fitted(Fitter.withDefaults(), LATEX);
    Recommendation answer = recommend(LATEX);
    RigSetup bench = answer.bench();
    Forecast hot = answer.chosen().orElseThrow().hotCorner();
    double speed = hot.speedMillimetresPerSecond();
    assertThat(wanted(live, bench, hot.powerPercent(), speed, hot.passes())).isEmpty();
    assertThat(wanted(live, bench, hot.powerPercent(), speed / 1.2, hot.passes())).hasValue(4);
  }

  private static OptionalInt wanted(
      LiveForecast live, RigSetup bench, double power, double speed, int passes) {
    return live.at(
            bench.rig(),
            bench.settings(power, speed),
            bench.exposure(power, speed),
            passes,
            bench.strokes(),
            0.9)
        .unharmedWanted();
  }

  /** What may char or was never tried stays so; what only the models promise has a state. */
  @Test
  void the_map_tells_what_too_few_patches_came_through_from_what_was_not_tried() {
    WindowMap map = recommend(LATEX).map().orElseThrow();
    List<MapCell> cells = map.rows().stream().flatMap(List::stream).toList();
    List<MapCell> promised =
        cells.stream().filter(c -> c.tried() && c.keepsChar() && c.keepsClearing()).toList();
    assertThat(promised).anyMatch(MapCell::borneOut).anyMatch(c -> !c.borneOut());
    assertThat(cells).anyMatch(c -> c.tried() && !c.keepsChar());
    assertThat(CellState.of(new MapCell(40, 16, true, false, true, true)))
        .isEqualTo(CellState.TOO_FEW);
    assertThat(CellState.of(new MapCell(40, 16, true, false, false, true)))
        .isEqualTo(CellState.CHARS);
  }
}
