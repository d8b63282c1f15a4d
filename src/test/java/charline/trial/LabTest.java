package charline.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class LabTest {

  @Test
  void a_colour_differs_from_itself_by_nothing() {
    Lab pine = new Lab(74, 9, 28);

    assertThat(Ciede2000.between(pine, pine)).isZero();
  }

  @Test
  void black_and_white_are_a_hundred_apart() {
    assertThat(Ciede2000.between(new Lab(0, 0, 0), new Lab(100, 0, 0)))
        .isCloseTo(100, within(1e-9));
  }

  @Test
  void impossible_colours_are_refused() {
    assertThatThrownBy(() -> new Lab(101, 0, 0))
        .hasMessage("Lightness must be between 0 and 100, not 101.0.");
    assertThatThrownBy(() -> new Lab(50, Double.NaN, 0))
        .hasMessage("a* and b* must be finite numbers, not NaN and 0.0.");
  }
}
