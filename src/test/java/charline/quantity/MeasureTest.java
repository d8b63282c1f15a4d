package charline.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import charline.quantity.Measure.Quantity;
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
    "20mil, LENGTH, 0.508",
    "20 mils, LENGTH, 0.508",
    "4.5m2, SURFACE, 4.5",
    "48ft2, SURFACE, 4.4593459",
    "60, SHARE, 60",
    "60%, SHARE, 60",
    "1.5kW, POWER, 1500",
    "0.5min, TIME, 30",
    "40000Hz, RATE, 40",
    "25cm², AREA, 25",
    "1e3mm/s, SPEED, 1000",
    "3cm/s, SPEED, 30",
    "3m/min, SPEED, 50",
    "1.2MHz, RATE, 1200",
    "500ps, PULSE_DURATION, 0.5",
    "0.1us, PULSE_DURATION, 100",
    "0.1µs, PULSE_DURATION, 100",
    "1.064um, WAVELENGTH, 1064",
    "1.064µm, WAVELENGTH, 1064",
    "600um, LENGTH, 0.6",
    "600µm, LENGTH, 0.6",
    "6cm, LENGTH, 60",
    "0.06m, LENGTH, 60",
    "2.5in, LENGTH, 63.5",
    "90µm, THICKNESS, 90",
    "0.09mm, THICKNESS, 90",
    "3mils, THICKNESS, 76.2",
    "50mm2, AREA, 0.5",
    "0.25m2, AREA, 2500",
    "2in2, AREA, 12.9032",
    "1ft2, AREA, 929.0304",
    "2500cm2, SURFACE, 0.25",
    "100in2, SURFACE, 0.064516",
    "90s, MINUTES, 1.5",
    "2h, MINUTES, 120",
    "500ms, TIME, 0.5",
    "1.5h, TIME, 5400"
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

  /** No thousands begin with a zero, and groups of them are of three digits. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1,5 | 1.5",
        "0,75 | 0.75",
        "12,25 | 12.25",
        "0,125 | 0.125",
        "1200,5 | 1200.5",
        "1234,567 | 1234.567",
        "1,2345 | 1.2345"
      })
  void a_comma_that_no_thousands_could_have_is_a_decimal_point(String typed, double expected) {
    assertThat(Measure.parse(typed, Quantity.SPEED).value()).isEqualTo(expected);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "fast    | SPEED | A speed must be a number with an optional unit, such as 30mm/s, not"
            + " \"fast\".",
        "30kg    | SPEED | A speed must be in cm/s, in/s, m/min, m/s, mm/s, not \"30kg\".",
        "NaN     | POWER | A power must be a number with an optional unit, such as 30W, not"
            + " \"NaN\".",
        "1e400 mm/s | SPEED | A speed of 1e400 mm/s is too large; correct it.",
        "-1e400  | SHARE | A percentage of -1e400 is too large; correct it.",
        "1e308m/s | SPEED | A speed of 1e308m/s is too large; correct it.",
        "60W     | SHARE | A percentage must be in %, not \"60W\".",
        "1,200   | SPEED | A speed of 1,200 can be read in two ways; write it without a comma, as"
            + " 1200 or 1.2.",
        "-12,500mm/s | SPEED | A speed of -12,500mm/s can be read in two ways; write it without a"
            + " comma, as -12500mm/s or -12.5mm/s.",
        "1,200 cm2 | AREA | An area of 1,200 cm2 can be read in two ways; write it without a comma,"
            + " as 1200 cm2 or 1.2 cm2.",
        "1,200,300 | POWER | A power must be written without commas, as 1200300, not"
            + " \"1,200,300\".",
        "1,200.5W | POWER | A power must be written without commas, as 1200.5W, not \"1,200.5W\"."
      })
  void what_cannot_be_read_is_refused_in_one_sentence(
      String typed, Quantity quantity, String message) {
    assertThatThrownBy(() -> Measure.parse(typed, quantity)).hasMessage(message);
  }
}
