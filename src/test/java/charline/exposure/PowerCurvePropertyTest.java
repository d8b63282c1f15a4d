package charline.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The curve through metered powers: it meets them, rises, and every power has one setting. */
class PowerCurvePropertyTest {
  private static final int CURVES = 200;
  private static final int SETTINGS = 60;

  /** Rising powers at rising settings, with steps small and large. */
  private static List<PowerCurve.Point> rising(Random random) {
    List<PowerCurve.Point> points = new ArrayList<>();
    double percent = 0;
    double watts = 0;
    int count = 1 + random.nextInt(6);
    for (int i = 0; i < count; i++) {
      percent += 0.5 + random.nextDouble() * 16;
      watts += 0.1 + random.nextDouble() * 60;
      points.add(new PowerCurve.Point(percent, watts));
    }
    return points;
  }

  @Test
  void the_curve_meets_every_check_and_back() {
    Random random = new Random(1);
    for (int k = 0; k < CURVES; k++) {
      List<PowerCurve.Point> points = rising(random);
      PowerCurve curve = PowerCurve.through(points);
      for (PowerCurve.Point point : points) {
        assertThat(curve.watts(point.percent())).isEqualTo(point.watts());
        assertThat(curve.percent(point.watts())).isEqualTo(point.percent());
      }
    }
  }

  /** Whatever was metered, in any order, falling powers and repeated settings among them. */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void the_curve_rises_and_every_power_belongs_to_one_setting(boolean sound) {
    Random random = new Random(2);
    for (int k = 0; k < CURVES; k++) {
      List<PowerCurve.Point> points = rising(random);
      if (!sound) {
        points.replaceAll(
            p ->
                new PowerCurve.Point(
                    Math.ceil(p.percent() / 8) * 8, 1 + random.nextDouble() * 200));
      }
      PowerCurve curve = PowerCurve.through(points);
      double before = 0;
      for (int i = 1; i <= SETTINGS; i++) {
        double percent = 130.0 * i / SETTINGS;
        double watts = curve.watts(percent);
        assertThat(watts).isGreaterThan(before);
        assertThat(curve.percent(watts)).isCloseTo(percent, within(1e-9 * percent));
        before = watts;
      }
    }
  }

  @Test
  void between_two_checks_the_power_lies_between_theirs() {
    Random random = new Random(3);
    for (int k = 0; k < CURVES; k++) {
      List<PowerCurve.Point> points = rising(random);
      PowerCurve curve = PowerCurve.through(points);
      for (int i = 1; i < points.size(); i++) {
        PowerCurve.Point a = points.get(i - 1);
        PowerCurve.Point b = points.get(i);
        double share = random.nextDouble();
        double percent = a.percent() + share * (b.percent() - a.percent());
        assertThat(curve.watts(percent))
            .isCloseTo(a.watts() + share * (b.watts() - a.watts()), within(1e-9 * b.watts()))
            .isBetween(a.watts(), b.watts());
      }
    }
  }

  @Test
  void beyond_the_checks_the_factor_of_the_nearest_one_counts() {
    PowerCurve curve =
        PowerCurve.through(List.of(new PowerCurve.Point(90, 176), new PowerCurve.Point(30, 48)));
    assertThat(curve.watts(15)).isCloseTo(24, within(1e-9));
    assertThat(curve.watts(100)).isCloseTo(176.0 / 0.9, within(1e-9));
    assertThat(curve.percent(24)).isCloseTo(15, within(1e-9));
  }

  /** Pooled, as 120 W at 50 % and 110 W at 60 % leave 115 W at 55 %. */
  @Test
  void powers_that_fall_are_pooled() {
    PowerCurve curve =
        PowerCurve.through(
            List.of(
                new PowerCurve.Point(30, 50),
                new PowerCurve.Point(50, 120),
                new PowerCurve.Point(60, 110),
                new PowerCurve.Point(100, 200)));
    assertThat(curve.points())
        .containsExactly(
            new PowerCurve.Point(30, 50),
            new PowerCurve.Point(55, 115),
            new PowerCurve.Point(100, 200));
  }

  @Test
  void of_two_powers_at_one_setting_the_later_counts() {
    PowerCurve curve =
        PowerCurve.through(List.of(new PowerCurve.Point(100, 150), new PowerCurve.Point(100, 190)));
    assertThat(curve.watts(100)).isEqualTo(190);
  }
}
