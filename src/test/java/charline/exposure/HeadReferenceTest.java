package charline.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What follows from the figure that a head draws. Speeds and overlaps: definitions of mean speed
 * and spacing, worked by hand. Rims: a place that goes as the sine of a steady phase spends 2/π
 * acos(1 - s) of its time in the outer share s of the width (arcsine distribution). Beam around the
 * focus: d(z) = d0 √(1 + (z/zR)²), ISO 11146-1.
 */
class HeadReferenceTest {
  private static Head head(String figure, double perSecond) {
    return new Head(
        Optional.of(Figure.ofWord(figure)),
        OptionalDouble.of(perSecond),
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  @ParameterizedTest
  @CsvSource({
    // 300 W over 60 mm at 30 mm/s with 150 lines/s: 60 x 150 mm/s, 30/150 mm
    "line, 60, 30, 150, 9000.00, 0.200000",
    "zigzag, 60, 30, 150, 9000.00, 0.200000",
    "lines, 60, 30, 150, 9000.00, 0.200000",
    // 75 full cycles over 60 mm: mean 2 x 60 x 75 mm/s
    "sinus, 60, 30, 150, 9000.00, 0.200000",
    // 20 mm circle, 100 turns/s, led at 20 mm/s: π x 20 x 100 mm/s, 20/100 mm a turn
    "circle, 20, 20, 100, 6283.19, 0.200000",
  })
  void figure_width_and_rate_give_spot_speed_and_spacing(
      String figure, double width, double hand, double rate, double speed, double spacing) {
    LineScan lines = head(figure, rate).lines(new HandPass(width, hand)).orElseThrow();
    assertThat(lines.spotSpeedMillimetresPerSecond()).isCloseTo(speed, within(0.005));
    assertThat(lines.lineSpacingMillimetres()).isCloseTo(spacing, within(5e-7));
  }

  @Test
  void how_a_spiral_runs_is_not_known() {
    assertThat(head("spiral", 100).lines(new HandPass(20, 20))).isEmpty();
    assertThat(head("my own", 100).path(new HandPass(20, 20))).isEmpty();
    assertThat(Head.UNKNOWN.lines(new HandPass(20, 20))).isEmpty();
  }

  @Test
  void overlaps_follow_along_and_across() {
    Spot spot = new Spot(1, SpotDefinition.ONE_OVER_E_SQUARED);
    LineScan lines = head("line", 150).lines(new HandPass(60, 30)).orElseThrow();
    // 25 kHz: dots 9000/25000 = 0.36 mm apart under a spot of 1 mm
    assertThat(lines.overlapAlongLine(25_000, spot)).isCloseTo(0.64, within(1e-12));
    assertThat(lines.lineOverlap(spot)).isCloseTo(0.8, within(1e-12));
    assertThat(lines.pulsesPerSpot(25_000, spot)).isCloseTo(2.77778, within(5e-6));
  }

  @ParameterizedTest
  @CsvSource({"sine", "circle"})
  void rims_of_a_sinus_sweep_and_of_a_circle_are_hot(String figure) {
    ScanFigure.HotRims path =
        (ScanFigure.HotRims) head(figure, 100).path(new HandPass(20, 20)).orElseThrow();
    assertThat(path.relativeDose(0)).isCloseTo(0.636620, within(5e-7));
    assertThat(path.relativeDose(0.8)).isCloseTo(1.06103, within(5e-6));
    assertThat(path.timeShareInOuter(0.2)).isCloseTo(0.409666, within(5e-7));
    // a spot of 2 mm makes strips of a tenth of the width each: 0.409666 / 0.2
    assertThat(path.rimDose(new Spot(2, SpotDefinition.ONE_OVER_E_SQUARED)))
        .isCloseTo(2.04833, within(5e-6));
  }

  @Test
  void a_defocus_makes_the_spot_that_the_optics_say() {
    Optics optics = new Optics(OptionalDouble.of(0.4), OptionalDouble.of(20));
    Focus focus = optics.focus(SpotDefinition.ONE_OVER_E_SQUARED, 1064).orElseThrow();
    assertThat(focus.at(5).oneOverESquaredMillimetres()).isCloseTo(0.524123, within(5e-7));
    assertThat(focus.at(-5)).isEqualTo(focus.at(5));
    assertThat(
            new Optics(OptionalDouble.of(0.4), OptionalDouble.empty())
                .focus(SpotDefinition.ONE_OVER_E_SQUARED, 1064))
        .isEmpty();
  }

  @Test
  void timed_strokes_give_the_hand_speed_of_their_mean_dose_and_its_spread() {
    TimedStrokes strokes = new TimedStrokes(300, TimedStrokes.times("4.0 5.0; 6.0"));
    assertThat(strokes.handSpeedMillimetresPerSecond()).isEqualTo(60);
    // sample standard deviation 1 s of a mean of 5 s
    assertThat(strokes.spread().orElseThrow()).isCloseTo(0.2, within(1e-12));
    assertThat(new TimedStrokes(300, TimedStrokes.times("4.5s")).spread()).isEmpty();
  }
}
