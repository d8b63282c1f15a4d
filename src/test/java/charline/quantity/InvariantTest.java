package charline.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import charline.exposure.Emission;
import charline.exposure.Exposure;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.PowerSetting;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.SpotDefinition;
import charline.exposure.TimedArea;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class InvariantTest {
  private static final Spot SPOT = new Spot(0.6, SpotDefinition.ONE_OVER_E_SQUARED);

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
  void lengths_speeds_and_powers_must_be_above_zero(double bad) {
    String came = Figures.plain(bad);
    assertThatThrownBy(() -> new Spot(bad, SpotDefinition.FULL_WIDTH_HALF_MAXIMUM))
        .hasMessage("Spot diameter must be above 0 mm, not " + came + " mm.");
    assertThatThrownBy(() -> new HandPass(60, bad))
        .hasMessage("Hand speed must be above 0 mm/s, not " + came + " mm/s.");
    assertThatThrownBy(() -> new LineScan(5000, bad))
        .hasMessage("Line spacing must be above 0 mm, not " + came + " mm.");
    assertThatThrownBy(() -> new TimedArea(bad, 4))
        .hasMessage("Area must be above 0 cm2, not " + came + " cm2.");
    assertThatThrownBy(() -> PowerSetting.watts(bad))
        .hasMessage("Power must be above 0 W, not " + came + " W.");
  }

  @Test
  void percent_ends_at_100() {
    assertThatThrownBy(() -> PowerSetting.percent(140))
        .hasMessage("Power must be between 0 and 100 %, not 140 %.");
  }

  @Test
  void a_pulsed_rig_needs_its_repetition_rate() {
    Settings settings =
        new Settings(PowerSetting.percent(50), new HandPass(60, 20), SPOT, Optional.empty());
    assertThatThrownBy(() -> Exposure.of(Emission.PULSED, 100, settings))
        .hasMessage("A pulsed rig needs its repetition rate in kHz; none was given.");
    assertThat(Exposure.of(Emission.CONTINUOUS, 100, settings).intensity()).isPositive();
  }

  @Test
  void plain_numbers_have_no_tails() {
    assertThat(Figures.plain(30)).isEqualTo("30");
    assertThat(Figures.plain(0.6)).isEqualTo("0.6");
    assertThat(Figures.plain(1.0 / 3)).isEqualTo("0.333333");
    assertThat(Figures.plain(1234567.5)).isEqualTo("1.23457e+06");
    assertThat(Figures.plain(-2.50)).isEqualTo("-2.5");
  }
}
