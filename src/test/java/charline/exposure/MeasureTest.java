package charline.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import charline.exposure.Measure.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Inch, mil and foot are exact by the international yard and pound agreement of 1959. */
class MeasureTest {
  @ParameterizedTest
  @CsvSource({
    "30mm/s, SPEED, 30",
    "1.2in/s, SPEED, 30.48",
    "2 m/s, SPEED, 2000",
    "90um, THICKNESS, 90",
    "3.5mil, THICKNESS, 88.9",
    "4.5m2, SURFACE, 4.5",
    "48ft2, SURFACE, 4.4593459",
    "60, SHARE, 60",
    "60%, SHARE, 60",
    "1.5kW, POWER, 1500",
    "0.5min, TIME, 30",
    "40000Hz, RATE, 40",
    "25cm², AREA, 25",
    "1e3mm/s, SPEED, 1000"
  })
  void a_number_with_its_unit_comes_in_the_base_unit(
      String typed, Quantity quantity, double expected) {
    assertThat(Measure.parse(typed, quantity).value()).isCloseTo(expected, within(1e-6));
  }

  @Test
  void a_decimal_comma_is_a_decimal_point_and_the_typed_text_is_kept() {
    Measure measure = Measure.parse(" 0,6 mm ", Quantity.LENGTH);
    assertThat(measure.value()).isEqualTo(0.6);
    assertThat(measure.typed()).isEqualTo("0,6 mm");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "fast    | SPEED | A speed must be a number with an optional unit, such as 30mm/s, not \"fast\".",
        "30kg    | SPEED | A speed must be in cm/s, in/s, m/min, m/s, mm/s, not \"30kg\".",
        "NaN     | POWER | A power must be a number with an optional unit, such as 30W, not \"NaN\".",
        "60W     | SHARE | A percentage must be in %, not \"60W\".",
        "1,200.5 | POWER | A power must be in kW, W, not \"1,200.5\"."
      })
  void what_cannot_be_read_is_refused_in_one_sentence(
      String typed, Quantity quantity, String message) {
    assertThatThrownBy(() -> Measure.parse(typed, quantity)).hasMessage(message);
  }
}
